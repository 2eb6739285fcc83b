// SPDX-License-Identifier: GPL-3.0-or-later
// An attachment: masses, where its load's centre, heel and cutting edge lie, the stops it is used with.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string attachment: ""
    readonly property var names: ["id", "coupler", "bucket", "centerAlong", "centerAcross", "heelAlong", "heelAcross", "edgeAlong", "edgeAcross", "upper", "lower"]
    readonly property var labels: [qsTr("Number or name of the attachment"), qsTr("Quick coupler, kg"), qsTr("Bucket, kg"), qsTr("Load's centre along the bucket floor from the hinge pin, mm"), qsTr("Load's centre square to the floor, mm"), qsTr("Heel along the floor, mm"), qsTr("Heel square to the floor, mm"), qsTr("Cutting edge along the floor, mm"), qsTr("Cutting edge square to the floor, mm"), qsTr("Upper stop: cutting edge above ground, mm"), qsTr("Lower stop: cutting edge above ground, mm")]
    title: attachment.length > 0 ? qsTr("Edit %1").arg(attachment) : qsTr("New attachment")
    Component.onCompleted: Profiles.openAttachment(attachment)
    Connections {
        target: Profiles
        function onSaved(id) {
            page.back();
        }
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        text: qsTr("What is not known stays empty. Without masses and a load centre a known mass is needed to calibrate.")
    }
    Repeater {
        id: fields
        model: page.names
        Field {
            id: field
            required property string modelData
            required property int index
            label: page.labels[index]
            text: Profiles.form[modelData] ?? ""
            readOnly: modelData === "id" && page.attachment.length > 0
            inputMethodHints: modelData === "id" ? Qt.ImhNone : Qt.ImhFormattedNumbersOnly
        }
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        color: Theme.bad
        text: Profiles.problem.length > 0 ? "✖ " + Profiles.problem : ""
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Save")
            enabled: !App.busy
            onPressedFully: {
                const form = {};
                for (let i = 0; i < fields.count; ++i)
                    form[page.names[i]] = (fields.itemAt(i) as Field).text;
                Profiles.saveAttachment(form);
            }
        }
    ]
}
