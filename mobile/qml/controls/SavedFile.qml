// SPDX-License-Identifier: GPL-3.0-or-later
// Where the file is that was saved last, and, where the phone can, handing it to another app.
import QtQuick
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    visible: Exporter.saved.length > 0
    Layout.fillWidth: true
    spacing: Theme.gap
    BodyText {
        Layout.fillWidth: true
        wrapMode: Text.WrapAnywhere
        color: Theme.good
        text: "✓ " + qsTr("Saved: %1").arg(Exporter.saved)
    }
    Press {
        visible: Exporter.canShare
        Layout.fillWidth: true
        text: qsTr("Hand the file to another app")
        onPressedFully: Exporter.share(qsTr("Hand the file to"))
    }
}
