// SPDX-License-Identifier: GPL-3.0-or-later
// What the feed says: whether it lives, where the boom is, how far the hold or the pass has come.
import QtQuick
import QtQuick.Layouts
import Hingepin

Card {
    id: bar
    visible: Live.source !== "none"
    edge: Live.alive ? Theme.line : Theme.bad
    BodyText {
        Layout.fillWidth: true
        font.bold: true
        color: Live.alive ? Theme.ink : Theme.bad
        text: !Live.alive ? "✖ " + qsTr("No readings are coming. They are waited for.") : Live.travel === "up" ? "▲ " + qsTr("Boom rising") : Live.travel === "down" ? "▼ " + qsTr("Boom lowering") : "■ " + qsTr("Standing still")
    }
    BodyText {
        visible: Live.alive
        Layout.fillWidth: true
        text: (Live.angleKnown ? qsTr("Boom %1°").arg(App.number(Live.boomAngle, 1)) + (Live.angleWanted ? " · " + qsTr("wanted %1°").arg(App.number(Live.wantedAngle, 1)) : "") + " · " : "") + Live.pressure
    }
    Rectangle {
        visible: Live.progress > 0
        Layout.fillWidth: true
        implicitHeight: 14
        color: Theme.ground
        border.color: Theme.line
        border.width: 1
        radius: 7
        Accessible.role: Accessible.ProgressBar
        Accessible.name: qsTr("%1 % done").arg(Math.round(Live.progress * 100))
        Rectangle {
            anchors.left: parent.left
            width: parent.width * Live.progress
            height: parent.height
            radius: 7
            color: Theme.good
        }
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        color: Theme.bad
        text: Live.trouble.length > 0 ? "✖ " + Live.trouble : Live.fault.length > 0 ? "✖ " + Live.fault : ""
        Accessible.role: Accessible.AlertMessage
    }
    BodyText {
        visible: Live.mishap.length > 0
        Layout.fillWidth: true
        color: Theme.warn
        font.pixelSize: Theme.smallText
        text: "⚠ " + qsTr("Practice: %1 It stays so until you say under Live readings that all is well, as if it had been mended.").arg(Live.mishapText)
    }
}
