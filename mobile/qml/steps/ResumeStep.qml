// SPDX-License-Identifier: GPL-3.0-or-later
// After an interruption a person says when it goes on; presses made before count no more.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    showsText: false
    actions: Job.view.mine ? [
        {
            text: qsTr("Go on"),
            kind: "main",
            run: () => Job.resume()
        }
    ] : [
        {
            text: qsTr("Take the job over as %1").arg(App.roleName(App.role)),
            kind: "main",
            run: () => Job.takeOver()
        }
    ]
    Heading {
        Layout.fillWidth: true
        text: qsTr("The job was interrupted")
    }
    BodyText {
        Layout.fillWidth: true
        text: qsTr("Everything that was done is kept. Before you go on: is the machine as you left it, and is nobody near it? Cautions that still hold are shown again, and \"the zone is clear\" is asked for again.")
    }
    BodyText {
        visible: !Job.view.mine
        Layout.fillWidth: true
        text: qsTr("Somebody else was in charge of it.")
    }
}
