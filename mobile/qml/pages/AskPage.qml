// SPDX-License-Identifier: GPL-3.0-or-later
// Asks a second person on their own phone: a code for its camera, then the code of its answer for this one's.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property bool isReading: false
    title: qsTr("Ask another phone")
    Component.onCompleted: Job.askOtherPhone()
    Connections {
        target: Job
        function onAnswerTaken() {
            page.back();
        }
    }
    // The code first: all of it has to be on the screen.
    CodeCard {
        visible: !page.isReading && Job.ask.length > 0
        code: Job.ask
        words: qsTr("Code that asks for the confirmation")
    }
    BodyText {
        visible: !page.isReading
        Layout.fillWidth: true
        text: qsTr("1. The second person opens \"Confirm for another phone\" on the first page of their own phone and reads this code. It holds for 15 minutes.")
    }
    BodyText {
        visible: !page.isReading
        Layout.fillWidth: true
        text: qsTr("2. They look for themself and answer. Then read the code that their phone shows.")
    }
    BodyText {
        visible: page.isReading
        Layout.fillWidth: true
        text: qsTr("Hold this phone over the other one, so that the whole code of the answer is in the picture.")
    }
    BodyText {
        Layout.fillWidth: true
        font.bold: true
        text: Job.view.text
    }
    Loader {
        active: page.isReading
        visible: active
        Layout.fillWidth: true
        sourceComponent: ScanView {
            onFound: code => {
                if (!Job.busy)
                    Job.takeAnswer(code);
            }
        }
    }
    Card {
        visible: Job.refusal.length > 0
        edge: Theme.bad
        BodyText {
            Layout.fillWidth: true
            color: Theme.bad
            text: "✖ " + Job.refusal
            Accessible.role: Accessible.AlertMessage
        }
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: !page.isReading
            enabled: Job.ask.length > 0
            text: qsTr("Read their answer")
            onPressedFully: page.isReading = true
        },
        Press {
            Layout.fillWidth: true
            visible: page.isReading
            text: qsTr("Ask again with a new code")
            onPressedFully: {
                page.isReading = false;
                Job.askOtherPhone();
            }
        }
    ]
}
