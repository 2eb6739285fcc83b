// SPDX-License-Identifier: GPL-3.0-or-later
// After an interruption a person says when it goes on; presses made before count no more.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    readonly property var people: App.people
    readonly property string inCharge: people.find(person => person.id === Job.view.inCharge)?.name ?? qsTr("Somebody else")
    showsText: false
    readFirst: true
    actions: Job.view.mine ? [
        {
            text: qsTr("Go on"),
            kind: "main",
            run: () => Job.resume()
        }
    ] : !Job.view.mayTakeOver ? [] : [
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
        font.bold: true
        text: qsTr("%1 is in charge.").arg(panel.inCharge) + (Job.view.mayTakeOver ? "" : " " + qsTr("They go on with it. What you confirm as a second person you then confirm beside them, with your own passphrase."))
    }
}
