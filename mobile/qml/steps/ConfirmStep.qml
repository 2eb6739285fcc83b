// SPDX-License-Identifier: GPL-3.0-or-later
// Yes or no; where a second person has to confirm, with their key.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    property bool asksAgain: false
    property string failing: ""
    readonly property var people: App.people
    readonly property var answers: Job.view.answers
    readonly property var actingRoles: Job.view.actingRoles
    readonly property var others: people.filter(person => person.name !== App.person && person.roles.some(role => panel.actingRoles.includes(role)))
    property string key: others.length > 0 ? others[0].key : ""
    readonly property bool isForeign: Job.view.secondPerson
    readonly property bool canUnconfirmed: answers.some(answer => answer.id === "unconfirmed")
    actions: {
        if (!isForeign)
            return [
                {
                    text: qsTr("Yes"),
                    kind: "main",
                    run: () => Job.answer("yes")
                },
                {
                    text: qsTr("No"),
                    kind: "bad",
                    run: () => Job.answer("no")
                }
            ];
        const otherPhone = {
            text: qsTr("Ask another phone"),
            note: qsTr("By a code, from screen to camera; no network is needed"),
            kind: others.length > 0 ? "plain" : "main",
            run: () => panel.visit("AskPage", {})
        };
        const no = {
            text: qsTr("No, it is not so"),
            kind: "bad",
            run: () => Job.answer("no")
        };
        const here = {
            text: qsTr("I confirm it"),
            kind: "main",
            enabled: panel.key.length > 0 && (App.demo || passphrase.text.length > 0),
            run: () => panel.confirm("yes")
        };
        const list = others.length > 0 ? [here, no, otherPhone] : [otherPhone, no];
        if (canUnconfirmed)
            list.push({
                text: qsTr("Nobody is here to confirm"),
                note: qsTr("The record will say so"),
                run: () => Job.answer("unconfirmed")
            });
        return list;
    }
    function confirm(answer: string) {
        const person = others.find(person => person.key === panel.key);
        const role = person.roles.find(role => panel.actingRoles.includes(role));
        Job.answerAs(panel.key, role, passphrase.text, answer);
        passphrase.text = "";
    }
    Card {
        visible: panel.isForeign
        BodyText {
            Layout.fillWidth: true
            font.bold: true
            text: qsTr("A second person looks for themself and confirms: %1").arg(panel.actingRoles.map(role => App.roleName(role)).join(", "))
        }
        BodyText {
            visible: panel.others.length === 0
            Layout.fillWidth: true
            text: qsTr("No such person has a key on this phone. Ask another phone, or add one under People.")
        }
        Choice {
            options: panel.others.map(person => ({
                        value: person.key,
                        text: person.name
                    }))
            value: panel.key
            onChosen: value => panel.key = value
        }
        Field {
            id: passphrase
            visible: panel.others.length > 0 && !App.demo
            label: qsTr("Their passphrase")
            echoMode: TextInput.Password
            inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
        }
    }
}
