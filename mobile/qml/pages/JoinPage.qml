// SPDX-License-Identifier: GPL-3.0-or-later
// A new phone for a yard that another phone has: a key of one's own.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property string problem: passphrase.text.length === 0 ? "" : App.passphraseProblem(passphrase.text)
    readonly property bool isReady: name.text.trim().length > 0 && passphrase.text.length > 0 && problem.length === 0 && again.text === passphrase.text
    title: qsTr("Join a yard")
    BodyText {
        Layout.fillWidth: true
        text: qsTr("The yard is on another phone. This one makes a key of your own, and asks that phone to let you in.")
    }
    Field {
        id: name
        label: qsTr("Your name")
    }
    Field {
        id: passphrase
        label: qsTr("Passphrase: 12 characters or more, a few words are best")
        echoMode: TextInput.Password
        inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        problem: page.problem
    }
    Field {
        id: again
        label: qsTr("The same passphrase again")
        echoMode: TextInput.Password
        inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        problem: text.length > 0 && text !== passphrase.text ? qsTr("This is not the same.") : ""
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        text: qsTr("It locks your signing key on this phone. Nobody can recover it: if it is lost, you join again with a new key.")
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Make my key")
            enabled: page.isReady && !App.busy
            onPressedFully: App.beginJoining(name.text, passphrase.text)
        }
    ]
}
