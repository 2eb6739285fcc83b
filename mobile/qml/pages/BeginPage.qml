// SPDX-License-Identifier: GPL-3.0-or-later
// A job begins: which procedure, with which attachment, in which way, and what has to be known beforehand.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    property string procedure: ""
    property string attachment: ""
    property string variant: ""
    property string lone: "not-allowed"
    property var typed: ({})
    readonly property var procedures: Yard.procedures
    readonly property var attachments: Profiles.attachments
    readonly property var chosen: procedures.find(each => each.id === procedure)
    title: qsTr("Begin a job on %1").arg(unit)
    Component.onCompleted: {
        Yard.readProcedures(unit, "");
        Profiles.readAttachments();
    }
    onAttachmentChanged: Yard.readProcedures(unit, attachment)
    Connections {
        target: Profiles
        function onAttachmentsChanged() {
            if (page.attachment.length === 0 && Profiles.attachments.length > 0)
                page.attachment = Profiles.attachments[0];
        }
    }
    Connections {
        target: Job
        function onViewChanged() {
            if (Job.open)
                page.replace("JobPage", {});
        }
    }
    // Never nothing at all: a layout without height does not arrange what comes later.
    Heading {
        visible: page.chosen === undefined
        Layout.fillWidth: true
        text: qsTr("What is to be done?")
    }
    Choice {
        visible: page.chosen === undefined
        options: page.procedures.map(each => ({
                    value: each.id,
                    text: each.title
                }))
        value: page.procedure
        onChosen: value => {
            page.procedure = value;
            page.variant = page.chosen.variants.length > 0 ? page.chosen.variants[0].id : "";
            page.scrollToTop();
        }
    }
    Heading {
        visible: page.chosen !== undefined
        Layout.fillWidth: true
        text: page.chosen?.title ?? ""
    }
    BodyText {
        visible: page.chosen !== undefined
        Layout.fillWidth: true
        font.bold: true
        text: page.chosen?.comesFirst ?? ""
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        text: (page.chosen?.before ?? []).length > 0 ? qsTr("Must have been done before: %1").arg(page.chosen.before.join(", ")) : ""
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        text: (page.chosen?.tools ?? []).length > 0 ? qsTr("Have at hand: %1").arg(page.chosen.tools.join("; ")) : ""
    }
    Choice {
        visible: (page.chosen?.variants ?? []).length > 1
        label: qsTr("Way")
        options: (page.chosen?.variants ?? []).map(each => ({
                    value: each.id,
                    text: each.text
                }))
        value: page.variant
        onChosen: value => page.variant = value
    }
    Choice {
        visible: page.chosen !== undefined && Profiles.attachments.length > 0
        label: qsTr("Fitted attachment")
        options: page.attachments.map(each => ({
                    value: each,
                    text: each
                }))
        value: page.attachment
        onChosen: value => page.attachment = value
    }
    Choice {
        visible: page.chosen !== undefined
        label: qsTr("If nobody is here to confirm what a second person should")
        options: [
            {
                value: "not-allowed",
                text: qsTr("Wait for somebody")
            },
            {
                value: "photo-from-afar",
                text: qsTr("A look from afar, by photo")
            },
            {
                value: "unconfirmed",
                text: qsTr("Go on, marked as unconfirmed")
            }
        ]
        value: page.lone
        onChosen: value => page.lone = value
    }
    Repeater {
        model: page.chosen?.entries ?? []
        Field {
            id: entry
            required property var modelData
            label: (entryNames[modelData.id] ?? modelData.id) + ", " + modelData.symbol + " " + qsTr("(empty where the attachment says it)")
            readonly property var entryNames: ({
                    "rated-payload": qsTr("Rated payload"),
                    "upper-height": qsTr("Wanted upper stop, cutting edge above ground"),
                    "test-mass": qsTr("Test mass")
                })
            inputMethodHints: Qt.ImhFormattedNumbersOnly
            onTextChanged: {
                const typed = page.typed;
                typed[modelData.id] = text.length > 0 ? text.replace(App.decimalMark, ".") + " " + modelData.unit : "";
                page.typed = typed;
            }
        }
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        color: Theme.bad
        text: Job.refusal.length > 0 ? "✖ " + Job.refusal : ""
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: page.chosen !== undefined
            text: qsTr("Begin")
            enabled: !Job.busy
            onPressedFully: Job.begin({
                unit: page.unit,
                attachment: page.attachment,
                procedure: page.procedure,
                variant: page.variant,
                loneWork: page.lone,
                entries: page.typed
            })
        },
        Press {
            Layout.fillWidth: true
            visible: page.chosen !== undefined
            text: qsTr("Another procedure")
            onPressedFully: page.procedure = ""
        }
    ]
}
