// SPDX-License-Identifier: GPL-3.0-or-later
// Where records go to: a share or object storage of the yard, what still waits and why, and an exchange now.
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property bool isSettingUp: false
    property string kind: "webdav"
    /// File of the authority that the share's certificate is checked against; "" for those that the phone knows.
    property string authority: ""
    readonly property var farSide: Syncer.farSide
    readonly property bool isSetUp: (farSide.url ?? "").length > 0
    readonly property var waiting: Syncer.waiting
    readonly property var quarantine: Syncer.quarantine
    title: qsTr("Exchange with the office")
    Component.onCompleted: Syncer.read()
    Connections {
        target: Syncer
        function onDone() {
            if (Syncer.problem.length === 0)
                page.isSettingUp = false;
        }
    }
    BodyText {
        Layout.fillWidth: true
        text: qsTr("Records, signatures and photos go to a place of the yard's own and come from there to every phone. What arrives is verified before it counts.")
    }
    BodyText {
        visible: page.isSetUp && !page.isSettingUp
        Layout.fillWidth: true
        wrapMode: Text.WrapAnywhere
        font.bold: true
        text: page.farSide.url ?? ""
    }
    BodyText {
        visible: page.isSetUp && !Syncer.canBegin && !page.isSettingUp
        Layout.fillWidth: true
        color: Theme.warn
        text: "⚠ " + qsTr("The password is not kept for you on this phone. Enter it once.")
    }
    ColumnLayout {
        visible: page.isSettingUp
        Layout.fillWidth: true
        spacing: Theme.gap
        Choice {
            label: qsTr("Kind of place")
            options: [
                {
                    value: "webdav",
                    text: qsTr("Share (WebDAV)")
                },
                {
                    value: "s3",
                    text: qsTr("Object storage (S3)")
                }
            ]
            value: page.kind
            onChosen: value => page.kind = value
        }
        Field {
            id: url
            label: qsTr("Address, beginning with https://")
            text: page.farSide.url ?? "https://"
            inputMethodHints: Qt.ImhUrlCharactersOnly
        }
        Field {
            id: bucket
            visible: page.kind === "s3"
            label: qsTr("Bucket")
            text: page.farSide.bucket ?? ""
            inputMethodHints: Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        }
        Field {
            id: region
            visible: page.kind === "s3"
            label: qsTr("Region")
            text: page.farSide.region ?? ""
            inputMethodHints: Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        }
        Field {
            id: user
            label: page.kind === "s3" ? qsTr("Id of the access key") : qsTr("User name")
            text: page.farSide.user ?? ""
            inputMethodHints: Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        }
        Field {
            id: secret
            label: page.kind === "s3" ? qsTr("Secret key") : qsTr("Password of the share")
            echoMode: TextInput.Password
            inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        }
        Press {
            Layout.fillWidth: true
            kind: "quiet"
            text: qsTr("Certificate of the share's own authority")
            note: page.authority.length > 0 ? qsTr("Chosen: %1").arg(page.authority.split("/").pop()) : qsTr("Only where the yard made its certificate itself: choose the file (PEM) that whoever runs the share gives out")
            onPressedFully: authority.open()
        }
        FileDialog {
            id: authority
            nameFilters: [qsTr("Certificates (%1)").arg("*.pem *.crt *.cer")]
            onAccepted: page.authority = String(selectedFile)
        }
    }
    BodyText {
        visible: text.length > 2
        Layout.fillWidth: true
        color: Theme.bad
        font.bold: true
        text: "✖ " + Syncer.problem
    }
    BodyText {
        visible: Syncer.progress.length > 0
        Layout.fillWidth: true
        text: (Syncer.running ? "◷ " : "") + Syncer.progress
    }
    Repeater {
        model: Syncer.findings
        Card {
            id: finding
            required property string modelData
            edge: Theme.warn
            BodyText {
                Layout.fillWidth: true
                text: "⚠ " + finding.modelData
            }
        }
    }
    ColumnLayout {
        visible: page.isSetUp && !page.isSettingUp
        Layout.fillWidth: true
        spacing: Theme.gap
        Toggle {
            on: Syncer.byItself
            words: qsTr("By itself, when there is a network")
            onPressedFully: Syncer.byItself = !Syncer.byItself
        }
        Toggle {
            on: Syncer.overMetered
            words: qsTr("Also over a network that is paid for by what it carries")
            onPressedFully: Syncer.overMetered = !Syncer.overMetered
        }
        BodyText {
            visible: text.length > 0
            Layout.fillWidth: true
            color: Theme.faintInk
            text: Syncer.rests
        }
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Waits to be sent")
    }
    BodyText {
        visible: page.waiting.length === 0
        Layout.fillWidth: true
        text: "✓ " + qsTr("Nothing waits.")
    }
    Repeater {
        model: page.waiting.slice(0, 50)
        Card {
            id: waits
            required property var modelData
            BodyText {
                Layout.fillWidth: true
                font.bold: true
                text: "◷ " + waits.modelData.what + " " + waits.modelData.name.slice(0, 8)
            }
            BodyText {
                Layout.fillWidth: true
                text: waits.modelData.why
            }
            BodyText {
                Layout.fillWidth: true
                color: Theme.faintInk
                font.pixelSize: Theme.smallText
                text: qsTr("since %1").arg(App.dateAndTime(waits.modelData.since))
            }
        }
    }
    BodyText {
        visible: page.waiting.length > 50
        Layout.fillWidth: true
        text: qsTr("and %1 more").arg(page.waiting.length - 50)
    }
    Heading {
        visible: page.quarantine.length > 0
        Layout.fillWidth: true
        text: qsTr("Arrived and not believed")
    }
    Repeater {
        model: page.quarantine.slice(0, 50)
        Card {
            id: held
            required property var modelData
            edge: Theme.bad
            BodyText {
                Layout.fillWidth: true
                font.bold: true
                text: "✖ " + held.modelData.name.slice(0, 8)
            }
            BodyText {
                Layout.fillWidth: true
                text: held.modelData.why
            }
        }
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: page.isSettingUp
            text: qsTr("Keep this place")
            enabled: !App.busy && url.text.length > 8 && user.text.length > 0
            onPressedFully: Syncer.setUp({
                kind: page.kind,
                url: url.text,
                user: user.text,
                bucket: page.kind === "s3" ? bucket.text : "",
                region: page.kind === "s3" ? region.text : "",
                ca_file: page.authority
            }, secret.text)
        },
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: Syncer.canBegin && !Syncer.running && !page.isSettingUp
            text: qsTr("Send and fetch now")
            onPressedFully: Syncer.begin()
        },
        Press {
            Layout.fillWidth: true
            visible: Syncer.running
            text: qsTr("Stop for now")
            note: qsTr("It goes on from here the next time")
            onPressedFully: Syncer.stop()
        },
        Press {
            Layout.fillWidth: true
            visible: !page.isSettingUp && !Syncer.running
            text: page.isSetUp ? qsTr("Change the place") : qsTr("Set up the place")
            onPressedFully: {
                page.kind = page.farSide.kind ?? "webdav";
                page.authority = page.farSide.ca_file ?? "";
                page.isSettingUp = true;
            }
        }
    ]
}
