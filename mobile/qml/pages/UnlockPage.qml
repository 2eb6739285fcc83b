// SPDX-License-Identifier: GPL-3.0-or-later
// Who is at the phone: the key that signs what is done now.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string key: App.people.length > 0 ? App.people[0].key : ""
    title: App.demo ? qsTr("Demo yard: who are you?") : qsTr("Who is at the phone?")
    canGoBack: false
    Choice {
        options: App.people.map(person => ({
                    value: person.key,
                    text: person.name,
                    note: person.roles.map(role => App.roleName(role)).join(", ")
                }))
        value: page.key
        onChosen: value => page.key = value
    }
    Field {
        id: passphrase
        visible: !App.demo
        label: qsTr("Passphrase")
        echoMode: TextInput.Password
        inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        onAccepted: App.unlock(page.key, text)
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Open")
            enabled: !App.busy && page.key.length > 0
            onPressedFully: App.unlock(page.key, passphrase.text)
        },
        Press {
            Layout.fillWidth: true
            text: qsTr("Another yard")
            onPressedFully: App.leaveYard()
        }
    ]
}
