// SPDX-License-Identifier: GPL-3.0-or-later
// Confirms for another phone: reads what it asks, shows it in words, and shows the sealed answer as a code.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property var asked: Confirmer.asked
    readonly property bool isAsked: (asked.unit ?? "").length > 0
    readonly property bool isAnswered: Confirmer.answer.length > 0
    title: qsTr("Confirm for another phone")
    Component.onCompleted: Confirmer.clear()
    Component.onDestruction: Confirmer.clear()
    Connections {
        target: Confirmer
        function onChanged() {
            page.scrollToTop();
        }
    }
    BodyText {
        visible: !page.isAsked
        Layout.fillWidth: true
        text: qsTr("On the other phone somebody presses \"Ask another phone\" at the step that you are to confirm. Hold this phone over its code.")
    }
    Loader {
        active: !page.isAsked
        visible: active
        Layout.fillWidth: true
        sourceComponent: ScanView {
            onFound: code => Confirmer.read(code)
        }
    }
    CautionPanel {
        visible: page.isAsked && !page.isAnswered
        signalWord: "warning"
        signalText: App.signalName("warning")
        hazard: qsTr("Others go to work by what you confirm.")
        consequence: qsTr("If it is not so, the machine can start or the boom can come down on them.")
        avoidance: qsTr("Go to the machine and look for yourself. Confirm only what you have seen. Local rules and the maker's manual come first.")
    }
    // The code before all else: the whole of it has to be on the screen.
    BodyText {
        visible: page.isAnswered
        Layout.fillWidth: true
        font.bold: true
        color: Confirmer.confirmed ? Theme.good : Theme.bad
        text: Confirmer.confirmed ? "✓ " + qsTr("Your answer: yes. Let the other phone read this code.") : "✖ " + qsTr("Your answer: no. Let the other phone read this code.")
    }
    CodeCard {
        visible: page.isAnswered
        code: Confirmer.answer
        words: qsTr("Code of your answer")
    }
    Card {
        visible: page.isAsked
        BodyText {
            Layout.fillWidth: true
            font.bold: true
            text: (page.asked.attachment ?? "").length > 0 ? qsTr("%1 with %2").arg(page.asked.unit ?? "").arg(page.asked.attachment) : page.asked.unit ?? ""
        }
        BodyText {
            visible: text.length > 0
            Layout.fillWidth: true
            text: page.asked.title ?? ""
        }
        Heading {
            Layout.fillWidth: true
            text: page.asked.text ?? ""
        }
        BodyText {
            Layout.fillWidth: true
            color: Theme.faintInk
            font.pixelSize: Theme.smallText
            text: qsTr("%1 asks, at %2 by the clock of that phone").arg(page.asked.by ?? "").arg(App.dateAndTime(page.asked.time ?? 0))
        }
    }
    BodyText {
        visible: page.isAsked && !page.isAnswered && (page.asked.seen ?? []).length > 0
        Layout.fillWidth: true
        color: Theme.faintInk
        text: qsTr("Said there just before:")
    }
    Repeater {
        model: page.isAnswered ? [] : page.asked.seen ?? []
        ColumnLayout {
            id: seen
            required property var modelData
            Layout.fillWidth: true
            spacing: 0
            BodyText {
                Layout.fillWidth: true
                color: Theme.faintInk
                font.pixelSize: Theme.smallText
                text: seen.modelData.what
            }
            BodyText {
                Layout.fillWidth: true
                text: seen.modelData.said
            }
        }
    }
    BodyText {
        visible: page.isAsked && !(page.asked.may ?? false)
        Layout.fillWidth: true
        color: Theme.bad
        text: "✖ " + qsTr("You can't answer this. It is for: %1").arg((page.asked.roles ?? []).join(", "))
    }
    BodyText {
        visible: text.length > 2
        Layout.fillWidth: true
        color: Theme.bad
        text: "✖ " + Confirmer.problem
        Accessible.role: Accessible.AlertMessage
    }
    // Below all that has to be read first.
    Press {
        Layout.fillWidth: true
        kind: "main"
        visible: page.isAsked && !page.isAnswered && (page.asked.may ?? false)
        text: qsTr("I confirm it")
        note: qsTr("Sealed with your key: %1").arg(App.person)
        onPressedFully: Confirmer.give(true)
    }
    Press {
        Layout.fillWidth: true
        kind: "bad"
        visible: page.isAsked && !page.isAnswered && (page.asked.may ?? false)
        text: qsTr("No, it is not so")
        onPressedFully: Confirmer.give(false)
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: page.isAnswered
            text: qsTr("The other phone has read it")
            onPressedFully: page.home()
        }
    ]
}
