// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    title: qsTr("The yard can't be opened")
    canGoBack: false
    BodyText {
        Layout.fillWidth: true
        text: App.problem
    }
    BodyText {
        Layout.fillWidth: true
        text: qsTr("Nothing was changed. Keep the folder as it is, and restore a backup beside it if you have one.")
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Try again")
            onPressedFully: App.begin()
        },
        Press {
            Layout.fillWidth: true
            text: qsTr("Open another yard")
            onPressedFully: App.leaveYard()
        }
    ]
}
