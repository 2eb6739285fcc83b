// SPDX-License-Identifier: GPL-3.0-or-later
// How a unit left and how it came back: what is not as it was.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string before: ""
    property string after: ""
    title: qsTr("Check-out and return compared")
    Component.onCompleted: Yard.compare(before, after)
    BodyText {
        visible: Yard.differences.length === 0
        Layout.fillWidth: true
        text: "✓ " + qsTr("Nothing differs that was read or answered.")
    }
    Repeater {
        model: Yard.differences
        Card {
            id: difference
            required property string modelData
            edge: Theme.warn
            BodyText {
                Layout.fillWidth: true
                text: "≠ " + difference.modelData
            }
        }
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("The record of the check-out")
        onPressedFully: page.open("RecordPage", {
            record: page.before
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("The record of the return")
        onPressedFully: page.open("RecordPage", {
            record: page.after
        })
    }
}
