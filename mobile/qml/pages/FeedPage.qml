// SPDX-License-Identifier: GPL-3.0-or-later
// Where live readings come from.
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    title: qsTr("Live readings")
    BodyText {
        Layout.fillWidth: true
        text: qsTr("Readings come as lines of a lift log (CSV): from a sensor gateway over the network, from a file that is played back, or from the simulated loader for practice.")
    }
    Choice {
        options: [
            {
                value: "none",
                text: qsTr("None")
            },
            {
                value: "practice",
                text: qsTr("Simulated loader"),
                note: qsTr("Invented; for practice units")
            },
            {
                value: "file",
                text: qsTr("A file, played back")
            },
            {
                value: "line",
                text: qsTr("Sensor gateway (TCP)")
            }
        ]
        value: Live.source
        onChosen: value => {
            if (value === "file")
                dialog.open();
            else if (value === "line")
                Live.open("line", address.text);
            else
                Live.open(value);
        }
    }
    Field {
        id: address
        label: qsTr("Address of the gateway, host:port")
        text: Live.source === "line" ? Live.address : "192.168.4.1:5510"
        inputMethodHints: Qt.ImhUrlCharactersOnly
    }
    LiveBar {}
    BodyText {
        visible: Live.alive
        Layout.fillWidth: true
        text: qsTr("%1 readings a second").arg(Math.round(Live.rowsPerSecond))
    }
    FileDialog {
        id: dialog
        nameFilters: [qsTr("Lift logs (%1)").arg("*.csv")]
        onAccepted: Live.open("file", String(selectedFile))
    }
}
