// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    /// Over a yard whose keys are lost.
    property bool anew: false
    property string role: "technician"
    readonly property var roles: ["technician", "yard-clerk", "safety-lead"]
    readonly property string problem: passphrase.text.length === 0 ? "" : App.passphraseProblem(passphrase.text)
    readonly property bool isReady: name.text.trim().length > 0 && passphrase.text.length > 0 && problem.length === 0 && again.text === passphrase.text
    title: anew ? qsTr("Make new keys") : qsTr("Make my yard")
    Field {
        id: name
        label: qsTr("Your name")
    }
    Choice {
        label: qsTr("You are mostly")
        options: page.roles.map(role => ({
                    value: role,
                    text: App.roleName(role)
                }))
        value: page.role
        onChosen: value => page.role = value
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
        text: qsTr("It locks your signing key and the yard's key on this phone. Nobody can recover it: write it down and keep it where the office keeps its keys. Others can be added later, each with a key of their own.")
        color: Theme.faintInk
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: page.anew ? qsTr("Make the new keys") : qsTr("Make the keys and the yard")
            enabled: page.isReady && !App.busy
            onPressedFully: {
                const all = ["technician", "supervisor", "safety-lead", "yard-clerk", "operator"];
                App.makeYard(name.text, [page.role].concat(all.filter(role => role !== page.role)), passphrase.text, page.anew);
            }
        }
    ]
}
