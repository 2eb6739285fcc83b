// SPDX-License-Identifier: GPL-3.0-or-later
// The engine computes; this shows only while it does, or where it could not.
import QtQuick
import Hingepin

StepPanel {
    actions: [
        {
            text: qsTr("Compute again"),
            enabled: !Job.busy,
            run: () => Job.evaluate()
        }
    ]
}
