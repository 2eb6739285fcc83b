// SPDX-License-Identifier: GPL-3.0-or-later
// A unit: lift cylinders, rated payload, how it can be taught, what its monitor shows.
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    property var teaching: []
    property var monitor: []
    property bool practice: App.demo
    readonly property var ways: [
        {
            id: "own-routine",
            text: qsTr("The machine's own routine")
        },
        {
            id: "typed-readings",
            text: qsTr("Readings typed from its monitor")
        },
        {
            id: "logged",
            text: qsTr("Logs or a live feed")
        }
    ]
    readonly property var stored: Profiles.form
    title: unit.length > 0 ? qsTr("Edit %1").arg(unit) : qsTr("New unit")
    Component.onCompleted: Profiles.openUnit(unit)

    function fill() {
        const form = page.stored;
        name.text = form.id ?? name.text;
        count.text = form.count ?? count.text;
        bore.text = form.bore ?? bore.text;
        rod.text = form.rod ?? rod.text;
        payload.text = form.payload ?? payload.text;
        windowLow.text = form.windowLow ?? windowLow.text;
        windowHigh.text = form.windowHigh ?? windowHigh.text;
        oilMinimum.text = form.oilMinimum ?? oilMinimum.text;
        testMass.text = form.testMass ?? testMass.text;
        recheck.text = form.recheckHours ?? recheck.text;
        teaching = form.teaching ?? teaching;
        monitor = form.monitor ?? monitor;
        practice = form.practice ?? practice;
    }
    function toggle(list: var, id: string): var {
        return list.includes(id) ? list.filter(each => each !== id) : list.concat([id]);
    }
    function toggleShown(quantity: string, unitCode: string) {
        const rest = monitor.filter(shown => shown.quantity !== quantity);
        monitor = monitor.some(shown => shown.quantity === quantity && shown.unit === unitCode) ? rest : rest.concat([
            {
                quantity: quantity,
                unit: unitCode
            }
        ]);
    }

    Connections {
        target: Profiles
        function onFormChanged() {
            page.fill();
        }
        function onSaved(id) {
            page.back();
        }
    }
    Field {
        id: name
        label: qsTr("Number or name of the unit")
        readOnly: page.unit.length > 0
    }
    Field {
        id: payload
        label: qsTr("Rated payload, kg")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Field {
        id: count
        label: qsTr("Lift cylinders, how many")
        inputMethodHints: Qt.ImhDigitsOnly
    }
    Field {
        id: bore
        label: qsTr("Lift cylinder bore, mm")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Field {
        id: rod
        label: qsTr("Lift cylinder rod, mm")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Field {
        id: windowLow
        label: qsTr("Weigh window from boom angle, degrees (if known)")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Field {
        id: windowHigh
        label: qsTr("Weigh window to boom angle, degrees (if known)")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Field {
        id: oilMinimum
        label: qsTr("Oil at least, °C, before pressures are taught (if the manual says)")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Field {
        id: testMass
        label: qsTr("Test mass of the yard, kg (if there is one)")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Field {
        id: recheck
        label: qsTr("Due again after, hours (if the yard says)")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("It can be taught by")
    }
    Repeater {
        model: page.ways
        Press {
            id: way
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            hold_ms: 0
            text: (page.teaching.includes(modelData.id) ? "☑ " : "☐ ") + modelData.text
            Accessible.role: Accessible.CheckBox
            Accessible.name: modelData.text
            Accessible.checkable: true
            Accessible.checked: page.teaching.includes(modelData.id)
            onPressedFully: page.teaching = page.toggle(page.teaching, modelData.id)
        }
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Its monitor shows")
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        text: qsTr("Press the unit in which it shows it; press it again if it does not show it at all. Mind which ton it is.")
    }
    Repeater {
        model: Profiles.quantities()
        ColumnLayout {
            id: quantity
            required property var modelData
            Layout.fillWidth: true
            BodyText {
                Layout.fillWidth: true
                text: quantity.modelData.text
            }
            Flow {
                Layout.fillWidth: true
                spacing: 6
                Repeater {
                    model: quantity.modelData.units
                    Press {
                        id: unitPress
                        required property var modelData
                        readonly property bool isChosen: page.monitor.some(shown => shown.quantity === quantity.modelData.id && shown.unit === modelData.code)
                        hold_ms: 0
                        text: (isChosen ? "☑ " : "☐ ") + modelData.symbol
                        Accessible.role: Accessible.CheckBox
                        Accessible.name: quantity.modelData.text + ", " + modelData.symbol
                        Accessible.checkable: true
                        Accessible.checked: isChosen
                        onPressedFully: page.toggleShown(quantity.modelData.id, modelData.code)
                    }
                }
            }
        }
    }
    Press {
        Layout.fillWidth: true
        kind: "quiet"
        hold_ms: 0
        text: (page.practice ? "☑ " : "☐ ") + qsTr("For practice: an invented machine")
        note: qsTr("Its records say so; the simulated loader may stand in for it")
        Accessible.role: Accessible.CheckBox
        Accessible.checkable: true
        Accessible.checked: page.practice
        onPressedFully: page.practice = !page.practice
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Linkage")
    }
    BodyText {
        Layout.fillWidth: true
        text: page.stored.hasLinkage === true ? "✓ " + qsTr("Its pins are on file: empty passes are enough to calibrate.") : qsTr("Its pins are not known. It can be calibrated with a known mass all the same.")
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Read the pins from a file")
        onPressedFully: dialog.open()
    }
    FileDialog {
        id: dialog
        nameFilters: [qsTr("Unit or job files (%1)").arg("*.json")]
        onAccepted: Profiles.readLinkage(String(selectedFile))
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        color: Theme.bad
        text: Profiles.problem.length > 0 ? "✖ " + Profiles.problem : ""
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Save")
            enabled: !App.busy && name.text.trim().length > 0
            onPressedFully: Profiles.saveUnit({
                id: name.text,
                count: count.text,
                bore: bore.text,
                rod: rod.text,
                payload: payload.text,
                windowLow: windowLow.text,
                windowHigh: windowHigh.text,
                oilMinimum: oilMinimum.text,
                testMass: testMass.text,
                recheckHours: recheck.text,
                teaching: page.teaching,
                monitor: page.monitor,
                practice: page.practice
            })
        }
    ]
}
