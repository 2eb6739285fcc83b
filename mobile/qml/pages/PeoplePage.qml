// SPDX-License-Identifier: GPL-3.0-or-later
// Who may sign, on this phone and on their own. Adding somebody takes the yard's passphrase and one of their own.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property bool isAdding: false
    property var roles: ["operator"]
    readonly property string problem: passphrase.text.length === 0 ? "" : App.passphraseProblem(passphrase.text)
    title: qsTr("People")
    Connections {
        target: App
        function onPeopleChanged() {
            page.isAdding = false;
        }
    }
    Repeater {
        model: [...App.people, ...App.peopleElsewhere]
        Card {
            id: person
            required property var modelData
            BodyText {
                Layout.fillWidth: true
                font.bold: true
                text: person.modelData.name
            }
            BodyText {
                Layout.fillWidth: true
                text: person.modelData.roles.length > 0 ? person.modelData.roles.map(role => App.roleName(role)).join(", ") : qsTr("May not sign any more")
            }
            BodyText {
                Layout.fillWidth: true
                visible: person.modelData.key.length === 0
                text: qsTr("Signs on their own phone")
            }
            BodyText {
                Layout.fillWidth: true
                color: Theme.faintInk
                font.pixelSize: Theme.smallText
                wrapMode: Text.WrapAnywhere
                text: qsTr("Key %1").arg(person.modelData.id)
            }
        }
    }
    ColumnLayout {
        visible: page.isAdding
        Layout.fillWidth: true
        spacing: Theme.gap
        Field {
            id: name
            label: qsTr("Their name")
        }
        Repeater {
            model: ["technician", "operator", "supervisor", "safety-lead", "yard-clerk"]
            Press {
                id: role
                required property string modelData
                readonly property bool isChosen: page.roles.includes(modelData)
                Layout.fillWidth: true
                kind: "quiet"
                hold_ms: 0
                text: (isChosen ? "☑ " : "☐ ") + App.roleName(modelData)
                Accessible.role: Accessible.CheckBox
                Accessible.name: App.roleName(modelData)
                Accessible.checkable: true
                Accessible.checked: isChosen
                onPressedFully: page.roles = isChosen ? page.roles.filter(each => each !== modelData) : page.roles.concat([modelData])
            }
        }
        Field {
            id: passphrase
            label: qsTr("A passphrase of their own, 12 characters or more")
            echoMode: TextInput.Password
            inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
            problem: page.problem
        }
        Field {
            id: yardPassphrase
            label: qsTr("The yard's passphrase")
            echoMode: TextInput.Password
            inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        }
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: !App.demo
            text: page.isAdding ? qsTr("Add this person") : qsTr("Add a person")
            enabled: !App.busy && (!page.isAdding || (name.text.trim().length > 0 && page.roles.length > 0 && passphrase.text.length > 0 && page.problem.length === 0))
            onPressedFully: {
                if (page.isAdding)
                    App.addPerson(name.text, page.roles, passphrase.text, yardPassphrase.text);
                else
                    page.isAdding = true;
            }
        },
        Press {
            Layout.fillWidth: true
            visible: !App.demo && !page.isAdding
            text: qsTr("Add somebody on their own phone")
            onPressedFully: page.open("AdmitPage", {})
        }
    ]
}
