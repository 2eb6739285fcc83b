// SPDX-License-Identifier: GPL-3.0-or-later
// The whole screen flashes with a sign and a word, for whoever wears ear defenders and sits a metre away.
import QtQuick
import Hingepin

Rectangle {
    id: flash
    objectName: "flash"
    anchors.fill: parent
    visible: opacity > 0
    opacity: 0
    color: kind === "again" ? "#b3001b" : "#004d1a"
    property string kind: "held"
    Text {
        anchors.centerIn: parent
        width: parent.width - 2 * Theme.margin
        height: parent.height - 2 * Theme.margin
        horizontalAlignment: Text.AlignHCenter
        verticalAlignment: Text.AlignVCenter
        wrapMode: Text.WordWrap
        fontSizeMode: Text.Fit
        minimumPixelSize: Theme.bodyText
        color: "#ffffff"
        font.pixelSize: Theme.readingText * 1.3
        font.bold: true
        text: flash.kind === "again" ? "✖ " + qsTr("Once more") : flash.kind === "complete" ? "✓ " + qsTr("Pass complete") : "✓ " + qsTr("Held")
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
        Accessible.ignored: !flash.visible
    }
    Connections {
        target: Cue
        function onFlash(kind) {
            flash.kind = kind;
            fade.restart();
        }
    }
    SequentialAnimation {
        id: fade
        PropertyAction {
            target: flash
            property: "opacity"
            value: 1
        }
        PauseAnimation {
            duration: 350
        }
        NumberAnimation {
            target: flash
            property: "opacity"
            to: 0
            duration: 350
        }
    }
}
