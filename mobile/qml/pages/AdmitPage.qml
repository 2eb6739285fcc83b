// SPDX-License-Identifier: GPL-3.0-or-later
// Lets somebody in on their own phone: reads who asks, lists the key in a role, and shows the yard's code for that phone.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string role: ""
    readonly property var roles: ["technician", "operator", "supervisor", "safety-lead", "yard-clerk"]
    readonly property var asking: Joiner.asking
    readonly property bool isAsked: (asking.key ?? "").length > 0
    readonly property bool isIn: Joiner.admission.length > 0
    title: qsTr("Add somebody")
    Component.onCompleted: Joiner.clear()
    Component.onDestruction: Joiner.clear()
    Connections {
        target: Joiner
        function onChanged() {
            page.scrollToTop();
            if (Joiner.problem.length > 0)
                yardPassphrase.text = "";
        }
    }
    BodyText {
        visible: !page.isAsked
        Layout.fillWidth: true
        text: qsTr("On their own phone they press \"Join a yard\" at the first start. Hold this phone over the code that it then shows.")
    }
    Loader {
        active: !page.isAsked
        visible: active
        Layout.fillWidth: true
        sourceComponent: ScanView {
            onFound: code => Joiner.read(code)
        }
    }
    BodyText {
        visible: text.length > 2
        Layout.fillWidth: true
        color: Theme.bad
        text: "✖ " + Joiner.problem
        Accessible.role: Accessible.AlertMessage
    }
    CautionPanel {
        visible: page.isAsked && !page.isIn
        signalWord: "warning"
        signalText: App.signalName("warning")
        hazard: qsTr("A key on the list counts as that person's signature.")
        consequence: qsTr("Whoever holds it confirms in their name that a machine is safe. If it is somebody else, people can be hurt.")
        avoidance: qsTr("Let in only who stands before you. Compare name and key on both screens.")
    }
    // The code before all else: the whole of it has to be on the screen.
    BodyText {
        visible: page.isIn
        Layout.fillWidth: true
        font.bold: true
        color: Theme.good
        text: "✓ " + qsTr("%1 is on the list. Let their phone read this code.").arg(page.asking.name ?? "")
    }
    CodeCard {
        visible: page.isIn
        code: Joiner.admission
        words: qsTr("Code that lets the other phone in")
    }
    BodyText {
        visible: page.isIn && !Joiner.hasLists
        Layout.fillWidth: true
        color: Theme.warn
        text: "⚠ " + qsTr("The yard's lists do not fit in the code. Their phone can sign once it has them: with the next exchange, or as a file.")
    }
    Card {
        visible: page.isAsked
        Heading {
            Layout.fillWidth: true
            text: page.asking.name ?? ""
        }
        BodyText {
            Layout.fillWidth: true
            font.bold: true
            text: qsTr("Their key begins with %1").arg(page.asking.key ?? "")
        }
        BodyText {
            visible: !page.isIn
            Layout.fillWidth: true
            color: Theme.faintInk
            font.pixelSize: Theme.smallText
            text: qsTr("Asked at %1 by the clock of that phone").arg(App.dateAndTime(page.asking.time ?? 0))
        }
    }
    Choice {
        visible: page.isAsked && !page.isIn
        label: qsTr("They sign as")
        options: page.roles.map(role => ({
                    value: role,
                    text: App.roleName(role)
                }))
        value: page.role
        onChosen: value => page.role = value
    }
    Field {
        id: yardPassphrase
        visible: page.isAsked && !page.isIn
        label: qsTr("The yard's passphrase")
        echoMode: TextInput.Password
        inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
    }
    // Below all that has to be read first.
    Press {
        visible: page.isAsked && !page.isIn
        Layout.fillWidth: true
        kind: "main"
        text: qsTr("Let them in")
        enabled: !App.busy && page.role.length > 0 && yardPassphrase.text.length > 0
        onPressedFully: Joiner.letIn(page.role, yardPassphrase.text)
    }
    Press {
        visible: page.isAsked && !page.isIn
        Layout.fillWidth: true
        kind: "bad"
        text: qsTr("No, it is somebody else")
        onPressedFully: page.back()
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: page.isIn
            text: qsTr("The other phone has read it")
            onPressedFully: page.home()
        }
    ]
}
