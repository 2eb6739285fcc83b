// SPDX-License-Identifier: GPL-3.0-or-later
// A QR code for another phone's camera, as large as the page allows: black on white in every look.
import QtQuick
import QtQuick.Layouts
import Hingepin

Rectangle {
    id: card
    property alias code: drawn.code
    property string words: ""
    Layout.fillWidth: true
    implicitHeight: Math.min(width, 480)
    color: "#ffffff"
    Accessible.role: Accessible.Graphic
    Accessible.name: words
    QrCode {
        id: drawn
        anchors.centerIn: parent
        width: Math.min(parent.width, parent.height)
        height: width
    }
}
