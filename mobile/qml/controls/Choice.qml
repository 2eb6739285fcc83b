// SPDX-License-Identifier: GPL-3.0-or-later
// One of a few: a press for each, the chosen one with a mark. `options`: list of {value, text, note}.
import QtQuick
import QtQuick.Layouts
import Hingepin

Column {
    id: choice
    property string label: ""
    property var options: []
    property var value
    signal chosen(var value)
    spacing: 6
    Layout.fillWidth: true
    BodyText {
        visible: choice.label.length > 0
        width: choice.width
        text: choice.label
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
    }
    Repeater {
        model: choice.options
        Press {
            id: option
            required property var modelData
            readonly property bool isChosen: modelData.value === choice.value
            width: choice.width
            kind: "quiet"
            hold_ms: 0
            text: (isChosen ? "● " : "○ ") + modelData.text
            note: modelData.note ?? ""
            Accessible.role: Accessible.RadioButton
            Accessible.name: modelData.text + (note.length > 0 ? ", " + note : "")
            Accessible.checkable: true
            Accessible.checked: isChosen
            onPressedFully: choice.chosen(modelData.value)
        }
    }
}
