// SPDX-License-Identifier: GPL-3.0-or-later
// The press before every movement: held, so that nothing presses it by chance.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    readFirst: true
    actions: [
        {
            text: qsTr("Hold: the zone is clear"),
            kind: "main",
            hold_ms: Theme.movementHold_ms,
            run: () => Job.zoneClear()
        }
    ]
    Card {
        edge: Theme.warn
        BodyText {
            Layout.fillWidth: true
            text: "⚠ " + qsTr("The machine moves next. Nobody near it, nobody under the boom, everybody in sight.")
        }
    }
}
