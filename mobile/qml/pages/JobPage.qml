// SPDX-License-Identifier: GPL-3.0-or-later
// One thing at a time: what the job asks for now, and the presses that answer it.
import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property StepPanel step: loader.item as StepPanel
    readonly property var stepActions: step ? step.actions : []
    readonly property bool overflows: step !== null && step.readFirst && loader.y + loader.height > room
    /// Presses stand below what has to be read, not beside it; it stays so where they then would fit beside, or both would
    /// change places for ever.
    property bool readsFirst: false
    onOverflowsChanged: if (overflows) readsFirst = true
    onStepChanged: layAnew()
    onWidthChanged: layAnew()
    onHeightChanged: layAnew()
    function layAnew() {
        readsFirst = false;
        laid.restart();
    }
    Timer {
        id: laid
        interval: 0
        onTriggered: if (page.overflows) page.readsFirst = true
    }
    title: Job.view.title
    mostActions: 0.75

    component StepPress: Press {
        required property var modelData
        Layout.fillWidth: true
        text: modelData.text
        note: modelData.note ?? ""
        kind: modelData.kind ?? "plain"
        hold_ms: modelData.hold_ms ?? (App.wet ? Theme.wetHold_ms : 0)
        enabled: !Job.busy && (modelData.enabled ?? true)
        onPressedFully: modelData.run()
    }
    busy: Job.busy

    function panelFor(view): string {
        switch (view.ask) {
        case "resume":
            return "ResumeStep";
        case "caution":
            return "CautionStep";
        case "zone":
            return "ZoneStep";
        case "begin":
        case "hold":
            return "HoldStep";
        case "reading":
            return "ReadingStep";
        case "doubt":
            return "DoubtStep";
        case "check":
            return "WaitStep";
        case "tag":
            return "TagStep";
        case "ended":
            return "EndStep";
        default:
            switch (view.kind) {
            case "pose":
            case "pass":
                return "MoveStep";
            case "evidence":
                return "EvidenceStep";
            case "note":
                return "NoteStep";
            case "sign":
                return "SignStep";
            case "monitor":
                return "MonitorStep";
            }
            return "ConfirmStep";
        }
    }

    onBack: Job.close()
    Component.onCompleted: loader.show()

    Connections {
        target: Job
        function onStepChanged() {
            if (!Job.open)
                return;
            loader.show();
            page.scrollToTop();
        }
    }

    Connections {
        target: loader.item
        ignoreUnknownSignals: true
        function onLeave(name, properties) {
            page.replace(name, properties);
        }
        function onVisit(name, properties) {
            page.open(name, properties);
        }
    }

    readonly property string machine: (Job.view.attachment.length > 0 ? qsTr("%1 with %2").arg(Job.view.unit).arg(Job.view.attachment) : Job.view.unit) + (Job.view.practice ? " · " + qsTr("practice, invented") : "")
    ProgressBar {
        id: progress
        visible: Job.view.phase === "running"
        Layout.fillWidth: true
        from: 0
        to: Math.max(1, Job.view.total)
        value: Job.view.done
        implicitHeight: 10
        Accessible.role: Accessible.ProgressBar
        Accessible.name: qsTr("Step %1 of %2").arg(Job.view.done + 1).arg(Job.view.total)
        background: Rectangle {
            color: Theme.surface
            border.color: Theme.line
            border.width: 1
            radius: 5
        }
        contentItem: Item {
            Rectangle {
                x: progress.mirrored ? parent.width - width : 0
                width: progress.position * parent.width
                height: parent.height
                radius: 5
                color: Theme.accent
            }
        }
    }
    BodyText {
        Layout.fillWidth: true
        font.pixelSize: Theme.smallText
        color: Theme.faintInk
        text: (progress.visible ? qsTr("Step %1 of %2").arg(Math.min(Job.view.done + 1, Job.view.total)).arg(Job.view.total) + " · " : "") + page.machine
    }
    Card {
        visible: Job.view.phase === "making-safe"
        edge: Theme.bad
        BodyText {
            Layout.fillWidth: true
            font.bold: true
            color: Theme.bad
            text: "✖ " + qsTr("The job has stopped. Make the machine safe first.")
        }
    }
    Card {
        visible: Job.view.failed.length > 0 && Job.view.ask !== "ended"
        edge: Theme.bad
        BodyText {
            Layout.fillWidth: true
            font.bold: true
            color: Theme.bad
            text: "✖ " + qsTr("Not passed")
        }
        BodyText {
            Layout.fillWidth: true
            text: Job.view.failed
        }
        BodyText {
            visible: text.length > 0
            Layout.fillWidth: true
            text: Job.view.failedWhy.length > 0 ? qsTr("It was: %1").arg(Job.view.failedWhy) : ""
        }
        BodyText {
            visible: Job.view.phase === "running"
            Layout.fillWidth: true
            font.bold: true
            text: qsTr("Do this now:")
        }
    }
    Card {
        visible: Job.view.found.length > 0 && Job.view.failed.length === 0
        edge: Job.view.marks.length > 0 ? Theme.warn : Theme.good
        BodyText {
            Layout.fillWidth: true
            font.bold: true
            text: qsTr("What the survey found")
        }
        Repeater {
            model: Job.view.found
            BodyText {
                required property string modelData
                Layout.fillWidth: true
                text: modelData
            }
        }
    }
    Loader {
        id: loader
        Layout.fillWidth: true
        function show() {
            setSource(Qt.resolvedUrl(page.panelFor(Job.view) + ".qml"), {
                tray: tray
            });
            page.step?.forceActiveFocus();
        }
    }
    Repeater {
        model: page.readsFirst ? page.stepActions : []
        StepPress {}
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
    Press {
        visible: Job.view.goBackTo.length > 0
        Layout.fillWidth: true
        kind: "quiet"
        text: "↶ " + qsTr("Do the last step again")
        note: qsTr("What was said stays on the record and no longer counts")
        onPressedFully: Job.goBack()
    }
    Press {
        visible: Job.view.phase === "running" || Job.view.phase === "making-safe"
        Layout.fillWidth: true
        kind: "quiet"
        text: "☰ " + qsTr("All that was done so far, giving up, going on later")
        onPressedFully: page.open("JobMorePage", {})
    }

    actions: [
        Item {
            id: tray
            visible: childrenRect.height > 0
            Layout.fillWidth: true
            implicitHeight: childrenRect.height
        },
        Repeater {
            model: page.readsFirst ? [] : page.stepActions
            StepPress {}
        }
    ]
}
