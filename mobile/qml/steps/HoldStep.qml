// SPDX-License-Identifier: GPL-3.0-or-later
// Time to pass: counted down large, finished by itself.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    property double left_ms: Job.holdLeft_ms()
    readonly property bool isRunning: Job.view.ask === "hold"
    actions: isRunning ? [
        {
            text: qsTr("It was disturbed: begin again"),
            run: () => Job.beginHold()
        },
        {
            text: qsTr("Failed"),
            kind: "bad",
            run: () => Job.answer("failed")
        }
    ] : [
        {
            text: qsTr("Begin: %1").arg(panel.clock(Job.view.hold_ms)),
            kind: "main",
            run: () => Job.beginHold()
        }
    ]
    Component.onCompleted: if (!isRunning && Job.view.byItself)
        begin.start()
    // Not while the step is still being made.
    Timer {
        id: begin
        interval: 0
        onTriggered: Job.beginHold()
    }
    function clock(ms: double): string {
        const s = Math.ceil(ms / 1000);
        return s < 120 ? qsTr("%n second(s)", "", s) : Math.floor(s / 60) + ":" + String(s % 60).padStart(2, "0");
    }
    Timer {
        running: panel.isRunning && !Job.busy
        interval: 200
        repeat: true
        triggeredOnStart: true
        onTriggered: {
            panel.left_ms = Job.holdLeft_ms();
            if (panel.left_ms <= 0) {
                Cue.held();
                Job.finishHold();
            }
        }
    }
    BodyText {
        visible: panel.isRunning
        Layout.fillWidth: true
        horizontalAlignment: Text.AlignHCenter
        font.pixelSize: Theme.readingText
        font.bold: true
        text: panel.clock(panel.left_ms)
    }
}
