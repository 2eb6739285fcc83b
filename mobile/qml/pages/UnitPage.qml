// SPDX-License-Identifier: GPL-3.0-or-later
// One unit: how it stands with each attachment, what can be begun, what was done.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    readonly property var entry: Yard.units.find(each => each.id === unit) ?? ({
            pairs: [],
            state: ""
        })
    title: unit
    Component.onCompleted: Yard.readRecords(unit)
    StateMark {
        Layout.fillWidth: true
        state_: page.entry.state
    }
    Repeater {
        model: page.entry.pairs
        Card {
            id: pair
            required property var modelData
            BodyText {
                Layout.fillWidth: true
                font.bold: true
                text: qsTr("With %1").arg(pair.modelData.attachment)
            }
            StateMark {
                Layout.fillWidth: true
                state_: pair.modelData.state
            }
            BodyText {
                visible: pair.modelData.due > 0
                Layout.fillWidth: true
                text: qsTr("Due again %1").arg(App.date(pair.modelData.due))
            }
        }
    }
    Press {
        Layout.fillWidth: true
        kind: "main"
        text: qsTr("Begin a job")
        onPressedFully: page.open("BeginPage", {
            unit: page.unit
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Edit the unit")
        onPressedFully: page.open("UnitEditPage", {
            unit: page.unit
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Attachments")
        onPressedFully: page.open("AttachmentsPage", {})
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Records")
    }
    BodyText {
        visible: Yard.records.length === 0
        Layout.fillWidth: true
        text: qsTr("None yet.")
    }
    Repeater {
        model: Yard.records
        Press {
            id: record
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: (modelData.phase === "done" ? "✓ " : "✖ ") + modelData.title
            note: App.dateAndTime(modelData.begun)
            onPressedFully: page.open("RecordPage", {
                record: modelData.record
            })
        }
    }
}
