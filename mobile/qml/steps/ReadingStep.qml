// SPDX-License-Identifier: GPL-3.0-or-later
// One number, typed with gloves or taken from the live feed.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    readonly property var units: Job.view.units
    readonly property var known: Job.view.known
    readonly property var weighed: Job.weighed
    readonly property var measure: Job.view.measure
    readonly property bool levels: !Job.view.machineSource && Job.view.unitCode === "deg" && Level.present
    property int unitIndex: 0
    readonly property string unitCode: units.length > 0 ? units[unitIndex].code : Job.view.unitCode
    readonly property string how: Job.view.fromMonitor ? "monitor" : "typed"
    focus: true
    Keys.forwardTo: [pad]
    actions: {
        const list = [];
        list.push({
            text: pad.isEmpty ? qsTr("Enter") : qsTr("Enter %1 %2").arg(pad.typed).arg(panel.units[panel.unitIndex]?.symbol ?? ""),
            kind: "main",
            enabled: !pad.isEmpty,
            run: () => panel.enter()
        });
        if (Job.view.optional)
            list.push({
                text: qsTr("Not measured"),
                run: () => Job.answer("skipped")
            });
        return list;
    }
    function enter() {
        if (!pad.isEmpty && !Job.busy)
            Job.read(pad.typed, unitCode, how);
    }
    MachineView {
        measure: panel.measure
        visible: measures
    }
    BodyText {
        visible: panel.measure.from !== undefined
        Layout.fillWidth: true
        color: Theme.faintInk
        text: (panel.measure.slope ? qsTr("In the picture: the slope of the line from A to B") : qsTr("In the picture: from A to B")) + (panel.measure.machine?.known === false ? ". " + qsTr("The loader is a plausible one: its own pins are not known yet.") : "")
    }
    Card {
        RowLayout {
            Layout.fillWidth: true
            LayoutMirroring.enabled: false
            spacing: Theme.gap
            BodyText {
                Layout.fillWidth: true
                Layout.minimumWidth: 0
                text: pad.typed.length > 0 ? pad.typed : "–"
                font.pixelSize: Math.min(Theme.readingText, 52)
                font.bold: true
                horizontalAlignment: Text.AlignRight
                wrapMode: Text.NoWrap
                fontSizeMode: Text.HorizontalFit
                minimumPixelSize: 18
                Accessible.name: qsTr("Typed: %1").arg(pad.typed)
            }
            BodyText {
                text: panel.units[panel.unitIndex]?.symbol ?? ""
                font.pixelSize: Theme.headingText
            }
        }
        BodyText {
            visible: text.length > 0
            Layout.fillWidth: true
            color: Theme.faintInk
            text: Job.view.low.length > 0 && Job.view.high.length > 0 ? qsTr("Between %1 and %2").arg(Job.view.low).arg(Job.view.high) : Job.view.low.length > 0 ? qsTr("At least %1").arg(Job.view.low) : Job.view.high.length > 0 ? qsTr("At most %1").arg(Job.view.high) : ""
        }
        BodyText {
            visible: Job.view.lastValue.length > 0
            Layout.fillWidth: true
            color: Theme.faintInk
            text: qsTr("Last time: %1").arg(Job.view.lastValue)
        }
        BodyText {
            visible: Live.instrument.length > 0
            Layout.fillWidth: true
            color: Theme.warn
            text: qsTr("Practice: the instrument shows %1").arg(Live.instrument)
        }
    }
    Press {
        visible: Job.view.machineSource && Live.source !== "none"
        Layout.fillWidth: true
        kind: Live.steady ? "main" : "plain"
        enabled: Live.steady && !Job.busy
        text: qsTr("Take the live value")
        note: Live.valueText.length > 0 ? qsTr("%1, %2").arg(Live.valueText).arg(Live.steady ? qsTr("steady") : qsTr("not steady yet")) : qsTr("nothing comes yet")
        onPressedFully: Live.takeValue()
    }
    Press {
        visible: panel.weighed.text !== undefined
        Layout.fillWidth: true
        text: qsTr("The app weighed %1 in this lift").arg(panel.weighed.text ?? "")
        note: qsTr("± %1. Take it where the machine itself takes no values").arg(panel.weighed.doubt ?? "")
        enabled: !Job.busy
        onPressedFully: Job.readWeighed()
    }
    Press {
        visible: panel.known.text !== undefined
        Layout.fillWidth: true
        text: qsTr("It is the known mass: %1").arg(panel.known.text ?? "")
        enabled: !Job.busy
        onPressedFully: Job.read(panel.known.number, panel.known.unit, "typed")
    }
    Press {
        visible: panel.levels
        Layout.fillWidth: true
        text: Level.typed.length > 0 ? qsTr("Take the phone's level: %1°").arg(Level.typed) : qsTr("Measure with the phone as a level")
        note: Level.typed.length > 0 ? qsTr("%1. Measured with the phone's top towards the bucket?").arg(Level.result) : qsTr("Lay it with its top towards the bucket")
        enabled: !Job.busy
        onPressedFully: {
            if (Level.typed.length === 0) {
                panel.visit("LevelPage", {});
                return;
            }
            const slope = Level.typed;
            Level.again();
            Job.read(slope, "deg", "typed");
        }
    }
    Keypad {
        id: pad
        parent: panel.tray
        width: parent?.width ?? 0
        onEntered: panel.enter()
    }
    Flow {
        visible: panel.units.length > 1
        Layout.fillWidth: true
        spacing: 6
        Repeater {
            model: panel.units
            Press {
                id: unit
                required property var modelData
                required property int index
                hold_ms: 0
                focusPolicy: Qt.NoFocus
                text: (panel.unitIndex === index ? "● " : "○ ") + modelData.symbol
                Accessible.role: Accessible.RadioButton
                Accessible.name: qsTr("Unit %1").arg(modelData.symbol)
                Accessible.checkable: true
                Accessible.checked: panel.unitIndex === index
                onPressedFully: panel.unitIndex = index
            }
        }
    }
}
