// SPDX-License-Identifier: GPL-3.0-or-later
// A new phone waits to be let in: its code for the yard's phone, then the code of that one for this camera.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property bool isReading: false
    property bool isRenewing: false
    property bool isGivingUp: false
    readonly property bool hasCode: Joiner.code.length > 0
    readonly property bool asksPassphrase: !isReading && (isRenewing || !hasCode)
    title: qsTr("Join a yard")
    canGoBack: false
    Connections {
        target: Joiner
        function onChanged() {
            page.scrollToTop();
            if (Joiner.problem.length > 0)
                passphrase.text = "";
        }
        function onCodeMade() {
            page.isRenewing = false;
        }
    }
    // The code first: all of it has to be on the screen.
    CodeCard {
        visible: !page.isReading && !page.asksPassphrase
        code: Joiner.code
        words: qsTr("Code that asks to be let in")
    }
    BodyText {
        visible: !page.isReading
        Layout.fillWidth: true
        font.bold: true
        text: qsTr("Your key begins with %1").arg(Joiner.key)
    }
    BodyText {
        visible: !page.isReading && !page.asksPassphrase
        Layout.fillWidth: true
        text: qsTr("1. On the phone that has the yard's key, open Settings, People, \"Add somebody on their own phone\", and read this code. It holds for a day.")
    }
    BodyText {
        visible: !page.isReading && !page.asksPassphrase
        Layout.fillWidth: true
        text: qsTr("2. Compare on both screens how the key begins. Then read the code that the other phone shows.")
    }
    BodyText {
        visible: page.isReading
        Layout.fillWidth: true
        text: qsTr("Hold this phone over the yard's phone, so that the whole code is in the picture.")
    }
    Field {
        id: passphrase
        visible: page.asksPassphrase
        label: qsTr("Your passphrase, to make a new code")
        echoMode: TextInput.Password
        inputMethodHints: Qt.ImhSensitiveData | Qt.ImhNoPredictiveText | Qt.ImhNoAutoUppercase
    }
    Loader {
        active: page.isReading
        visible: active
        Layout.fillWidth: true
        sourceComponent: ScanView {
            onFound: code => Joiner.take(code)
        }
    }
    Card {
        visible: Joiner.problem.length > 0
        edge: Theme.bad
        BodyText {
            Layout.fillWidth: true
            color: Theme.bad
            text: "✖ " + Joiner.problem
            Accessible.role: Accessible.AlertMessage
        }
    }
    // Below all that is needed to be let in.
    Press {
        visible: !page.isReading && !page.asksPassphrase
        Layout.fillWidth: true
        text: qsTr("Make a new code")
        onPressedFully: page.isRenewing = true
    }
    Press {
        visible: !page.isReading && !page.isGivingUp
        Layout.fillWidth: true
        text: qsTr("Make a yard of my own instead")
        onPressedFully: page.isGivingUp = true
    }
    Card {
        visible: !page.isReading && page.isGivingUp
        edge: Theme.bad
        BodyText {
            Layout.fillWidth: true
            text: qsTr("The key that was made here is then removed. If it has been let in already, have it revoked.")
        }
        Press {
            Layout.fillWidth: true
            kind: "bad"
            hold_ms: Theme.movementHold_ms
            text: qsTr("Hold to remove the key")
            onPressedFully: App.giveUpJoining()
        }
        Press {
            Layout.fillWidth: true
            text: qsTr("Keep the key")
            onPressedFully: page.isGivingUp = false
        }
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: !page.isReading && !page.asksPassphrase
            text: qsTr("Read the yard's code")
            onPressedFully: page.isReading = true
        },
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: page.asksPassphrase
            enabled: !App.busy && passphrase.text.length > 0
            text: qsTr("Make the code")
            onPressedFully: Joiner.makeCode(passphrase.text)
        },
        Press {
            Layout.fillWidth: true
            visible: page.isReading
            text: qsTr("Show my code again")
            onPressedFully: page.isReading = false
        }
    ]
}
