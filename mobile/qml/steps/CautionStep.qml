// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import Hingepin

StepPanel {
    showsText: false
    readFirst: true
    actions: [
        {
            text: qsTr("I have read this"),
            kind: "main",
            run: () => Job.acknowledge()
        }
    ]
    CautionPanel {
        signalWord: Job.view.signalWord
        signalText: App.signalName(Job.view.signalWord)
        hazard: Job.view.hazard
        consequence: Job.view.consequence
        avoidance: Job.view.avoidance
    }
}
