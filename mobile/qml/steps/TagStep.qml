// SPDX-License-Identifier: GPL-3.0-or-later
// The tag of a job that failed or was given up: it is printed or written out, hung up, and only then the job ends.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    actions: [
        {
            text: qsTr("Save the tag as a PDF"),
            run: () => Exporter.tagOfLines(Job.view.tag, Job.view.unit)
        },
        {
            text: qsTr("The tag hangs on the machine"),
            kind: "main",
            run: () => Job.answer("hung")
        }
    ]
    Card {
        edge: Theme.bad
        Repeater {
            model: Job.view.tag
            BodyText {
                required property string modelData
                required property int index
                Layout.fillWidth: true
                font.bold: index === 0
                text: modelData
            }
        }
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        text: Exporter.saved.length > 0 ? qsTr("Saved: %1").arg(Exporter.saved) : ""
    }
}
