// SPDX-License-Identifier: GPL-3.0-or-later
// Who is at the phone: the key that signs what is done now.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property var people: App.people
    property string key: people.length > 0 ? people[0].key : ""
    title: App.demo ? qsTr("Demo yard: who are you?") : qsTr("Who is at the phone?")
    canGoBack: false
    // Never nothing at all: a layout without height does not arrange what comes later.
    BodyText {
        Layout.fillWidth: true
        text: App.demo ? qsTr("All of them are invented. Choose whom you want to be.") : qsTr("Choose your name.")
    }
    Choice {
        options: page.people.map(person => ({
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
