// SPDX-License-Identifier: GPL-3.0-or-later
// Where live readings come from.
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property bool choosing: false
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
    ColumnLayout {
        visible: Live.source === "practice"
        Layout.fillWidth: true
        spacing: Theme.gap
        Heading {
            Layout.fillWidth: true
            text: qsTr("Practise what goes wrong")
        }
        BodyText {
            Layout.fillWidth: true
            text: qsTr("The simulated loader can misbehave, from its next movement on, as if it were so on the machine. What the job then says and asks for is part of the practice.")
        }
        Press {
            Layout.fillWidth: true
            text: (page.choosing ? "▾ " : "▸ ") + qsTr("The loader misbehaves")
            note: Live.mishap.length > 0 ? Live.mishapText : qsTr("No, all is well")
            onPressedFully: page.choosing = !page.choosing
        }
        Choice {
            visible: page.choosing
            options: page.choosing ? [
                {
                    value: "",
                    text: qsTr("All is well")
                },
                ...Live.mishaps()
            ] : []
            value: Live.mishap
            onChosen: value => {
                Live.suffer(value);
                page.choosing = false;
            }
        }
        Press {
            Layout.fillWidth: true
            text: qsTr("Cut the readings off for 10 seconds")
            note: qsTr("As when a plug comes off; they come back by themselves")
            onPressedFully: Live.dropOut(10)
        }
    }
    FileDialog {
        id: dialog
        nameFilters: [qsTr("Lift logs (%1)").arg("*.csv")]
        onAccepted: Live.open("file", String(selectedFile))
    }
}
