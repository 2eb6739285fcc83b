// SPDX-License-Identifier: GPL-3.0-or-later
// Boom and bucket brought somewhere, or one travel of the boom: what is wanted, where it is, and by itself on when it is there.
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    readonly property bool isPass: Job.view.kind === "pass"
    readonly property string wanted: isPass ? passWords() : poseWords()
    readonly property bool isPractice: Live.source === "practice"
    actions: (isPractice ? [
        {
            text: qsTr("Move the practice loader"),
            note: qsTr("It does what the step asks; on a real machine your hands are on the levers"),
            kind: "main",
            run: () => Live.move()
        }
    ] : []).concat([
        {
            text: isPass ? qsTr("The pass is done") : qsTr("It stands there"),
            kind: isPractice ? "plain" : "main",
            enabled: !(isPass && Job.view.log === "required"),
            run: () => Job.answer("done")
        },
        {
            text: qsTr("Failed"),
            kind: "bad",
            run: () => Job.answer("failed")
        }
    ])
    function joined(words: var): string {
        return words.filter(word => word.length > 0).join(" · ");
    }
    function poseWords(): string {
        const boom = {
            "lowest": qsTr("Boom at its lowest"),
            "highest": qsTr("Boom at its highest"),
            "level": qsTr("Boom level"),
            "carry": qsTr("Boom at carry height"),
            "ground": qsTr("Boom down, on the ground")
        }[Job.view.boom] ?? "";
        const bucket = {
            "racked": qsTr("bucket racked back"),
            "level": qsTr("bucket level"),
            "dumped": qsTr("bucket dumped")
        }[Job.view.bucket] ?? "";
        const from = Job.view.approach === "from-below" ? qsTr("come from below") : Job.view.approach === "from-above" ? qsTr("come from above") : "";
        return joined([boom, bucket, from]);
    }
    function passWords(): string {
        const way = Job.view.direction === "up" ? qsTr("Raise") : qsTr("Lower");
        const pace = Job.view.pace === "slow" ? qsTr("slowly") : Job.view.pace === "fast" ? qsTr("fast") : qsTr("at your own pace");
        const load = Job.view.load === "empty" ? qsTr("bucket empty") : Job.view.load === "test-mass" ? qsTr("with the test mass") : "";
        return joined([way, pace, load]);
    }
    Component.onCompleted: Cue.say(Job.view.text)
    Connections {
        target: Live
        function onPoseHeld() {
            Cue.held();
        }
        function onPassComplete() {
            Cue.complete();
        }
        function onOnceMore() {
            Cue.again();
        }
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        font.bold: true
        text: panel.wanted
    }
    LiveBar {}
    MachineView {}
    Loader {
        active: panel.isPass && Live.source !== "none"
        visible: active
        Layout.fillWidth: true
        // Charts are read from the disk only when one is shown.
        Component.onCompleted: if (panel.isPass)
            setSource(Qt.resolvedUrl("LiftChart.qml"), {
                live: true
            })
    }
    BodyText {
        visible: panel.isPass && Job.view.log === "required" && Live.source === "none"
        Layout.fillWidth: true
        color: Theme.warn
        text: qsTr("This pass needs a log: open live readings, or bring the log as a file.")
    }
    Press {
        visible: panel.isPass && Job.view.log !== "none"
        Layout.fillWidth: true
        text: qsTr("Bring the log as a file")
        onPressedFully: logFile.open()
    }
    Press {
        visible: Live.source === "none" && Job.view.practice
        Layout.fillWidth: true
        text: qsTr("Practise with the simulated loader")
        onPressedFully: Live.open("practice")
    }
    FileDialog {
        id: logFile
        nameFilters: [qsTr("Lift logs (%1)").arg("*.csv")]
        onAccepted: Job.answer("done", "", [String(selectedFile)])
    }
}
