// SPDX-License-Identifier: GPL-3.0-or-later
// A number that is not plausible: what may have been meant, or that it is so all the same.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    property bool again: false
    readonly property var suggestions: Job.view.suggestions
    actions: suggestions.map(suggestion => ({
                text: qsTr("I meant %1").arg(suggestion.text),
                kind: "main",
                run: () => Job.readInstead(suggestion.value)
            })).concat([
        {
            text: qsTr("Type it again"),
            run: () => Qt.callLater(() => panel.again = true)
        },
        {
            text: qsTr("It is %1").arg(Job.view.doubtValue),
            note: qsTr("The record will say that it was doubted and confirmed"),
            kind: "bad",
            run: () => Job.insist()
        }
    ])
    Card {
        edge: Theme.warn
        BodyText {
            Layout.fillWidth: true
            font.bold: true
            text: "⚠ " + qsTr("%1: can that be?").arg(Job.view.doubtValue)
        }
        BodyText {
            Layout.fillWidth: true
            text: qsTr("Usual is between %1 and %2. Look for a slipped decimal mark or another unit.").arg(Job.view.low).arg(Job.view.high)
        }
    }
    Loader {
        active: panel.again
        visible: active
        Layout.fillWidth: true
        sourceComponent: ColumnLayout {
            Keypad {
                id: pad
                Layout.fillWidth: true
                focus: true
            }
            Press {
                Layout.fillWidth: true
                kind: "main"
                text: qsTr("Enter %1 %2").arg(pad.typed).arg(Job.view.units.length > 0 ? Job.view.units[0].symbol : "")
                enabled: !pad.isEmpty && !Job.busy
                onPressedFully: Job.read(pad.typed, Job.view.units.length > 0 ? Job.view.units[0].code : Job.view.unitCode, Job.view.fromMonitor ? "monitor" : "typed")
            }
        }
    }
}
