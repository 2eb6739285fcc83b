// SPDX-License-Identifier: GPL-3.0-or-later
// A line of text to type, with its name above it.
import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: field
    property alias text: input.text
    property string label: ""
    property string problem: ""
    property alias echoMode: input.echoMode
    property alias inputMethodHints: input.inputMethodHints
    property alias readOnly: input.readOnly
    signal accepted
    spacing: 4
    Layout.fillWidth: true
    BodyText {
        Layout.fillWidth: true
        text: field.label
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        Accessible.ignored: true
    }
    TextField {
        id: input
        Layout.fillWidth: true
        implicitHeight: Math.max(Theme.target, contentHeight + 2 * Theme.gap)
        font.pixelSize: Theme.bodyText
        color: Theme.ink
        selectByMouse: true
        horizontalAlignment: App.rightToLeft ? TextInput.AlignRight : TextInput.AlignLeft
        Accessible.name: field.label
        onAccepted: field.accepted()
        background: Rectangle {
            color: Theme.surface
            radius: Theme.radius
            border.width: input.activeFocus ? 3 : Theme.lineWidth + 1
            border.color: field.problem.length > 0 ? Theme.bad : input.activeFocus ? Theme.accent : Theme.line
        }
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        text: field.problem
        color: Theme.bad
        font.pixelSize: Theme.smallText
    }
}
