// SPDX-License-Identifier: GPL-3.0-or-later
// The end: how it ended, what the record says, what can be handed over.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    readonly property bool isDone: Job.view.phase === "done"
    showsText: false
    actions: Job.view.record.length === 0 ? [
        {
            text: qsTr("Seal the record"),
            kind: "main",
            run: () => Job.reopen(Job.view.id)
        }
    ] : [
        {
            text: qsTr("Show the record"),
            kind: "main",
            run: () => panel.show()
        }
    ]
    function show() {
        const record = Job.view.record;
        Job.close();
        leave("RecordPage", {
            record: record
        });
    }
    Card {
        edge: panel.isDone ? Theme.good : Theme.bad
        Heading {
            Layout.fillWidth: true
            color: panel.isDone ? Theme.good : Theme.bad
            text: panel.isDone ? "✓ " + qsTr("Done") : "✖ " + (Job.view.phase === "failed" ? qsTr("Failed: do not use this scale") : qsTr("Given up: do not use this scale"))
        }
        BodyText {
            visible: Job.view.record.length > 0
            Layout.fillWidth: true
            text: qsTr("Sealed with your key. Nobody can change it without it showing.")
        }
        BodyText {
            visible: Job.view.record.length > 0
            Layout.fillWidth: true
            color: Theme.faintInk
            font.pixelSize: Theme.smallText
            wrapMode: Text.WrapAnywhere
            text: qsTr("Record %1").arg(Job.view.record)
        }
    }
    Repeater {
        model: Job.view.marks
        Card {
            id: mark
            required property string modelData
            edge: Theme.warn
            BodyText {
                Layout.fillWidth: true
                text: "⚠ " + mark.modelData
            }
        }
    }
}
