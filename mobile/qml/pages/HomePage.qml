// SPDX-License-Identifier: GPL-3.0-or-later
// What a person sees first, by the role that they act in: jobs to go on with and units; for the safety lead what waits for
// a confirmation; for the yard checker what is out on hire.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property bool isSafetyLead: App.role === "safety-lead"
    readonly property bool isChecker: App.role === "yard-clerk"
    readonly property var counts: Yard.counts
    readonly property var confirmed: Yard.confirmed
    title: App.demo ? qsTr("Demo yard (invented)") : "Hingepin"
    canGoBack: false
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        text: qsTr("%1, %2").arg(App.person).arg(App.roleName(App.role))
    }
    BodyText {
        visible: (page.counts.doNotUse ?? 0) > 0
        Layout.fillWidth: true
        color: Theme.bad
        font.bold: true
        text: "✖ " + qsTr("%n unit(s) must not be used", "", page.counts.doNotUse ?? 0)
    }
    BodyText {
        visible: (page.counts.due ?? 0) > 0
        Layout.fillWidth: true
        color: Theme.warn
        font.bold: true
        text: "◷ " + qsTr("%n unit(s) due now or soon", "", page.counts.due ?? 0)
    }
    Heading {
        visible: page.isSafetyLead
        Layout.fillWidth: true
        text: qsTr("Waiting for a second person")
    }
    BodyText {
        visible: page.isSafetyLead && Yard.awaited.length === 0
        Layout.fillWidth: true
        text: qsTr("Nothing waits.")
    }
    Repeater {
        model: page.isSafetyLead ? Yard.awaited : []
        Press {
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: "◷ " + modelData.unit + ": " + modelData.waitsFor
            note: qsTr("%1, since %2").arg(modelData.roles.join(", ")).arg(App.dateAndTime(modelData.last))
            onPressedFully: {
                Job.reopen(modelData.id);
                page.open("JobPage", {});
            }
        }
    }
    Press {
        Layout.fillWidth: true
        kind: "quiet"
        text: "▣ " + qsTr("Confirm for another phone")
        note: qsTr("Reads the code by which it asks")
        onPressedFully: page.open("AnswerPage", {})
    }
    Heading {
        visible: page.isSafetyLead && Yard.confirmed.length > 0
        Layout.fillWidth: true
        text: qsTr("Confirmed lately")
    }
    Repeater {
        model: page.isSafetyLead ? page.confirmed.slice(0, 20) : []
        Press {
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: (modelData.good ? "✓ " : "✖ ") + modelData.unit + ": " + modelData.text
            note: [modelData.person, modelData.role, App.dateAndTime(modelData.time)].concat(modelData.marks).join(" · ")
            enabled: modelData.record.length > 0
            onPressedFully: page.open("RecordPage", {
                record: modelData.record
            })
        }
    }
    Heading {
        visible: page.isChecker
        Layout.fillWidth: true
        text: qsTr("Out on hire")
    }
    BodyText {
        visible: page.isChecker && Yard.checkedOut.length === 0
        Layout.fillWidth: true
        text: qsTr("No unit is out.")
    }
    Repeater {
        model: page.isChecker ? Yard.checkedOut : []
        Press {
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: "⇢ " + modelData.unit
            note: qsTr("since %1").arg(App.date(modelData.time))
            onPressedFully: page.open("UnitPage", {
                unit: modelData.unit
            })
        }
    }
    Heading {
        visible: Yard.running.length > 0
        Layout.fillWidth: true
        text: qsTr("Go on with")
    }
    Repeater {
        model: Yard.running
        Press {
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: "▶ " + modelData.title
            note: [modelData.unit, modelData.person, modelData.waitsFor].filter(each => each.length > 0).join(" · ")
            onPressedFully: {
                Job.reopen(modelData.id);
                page.open("JobPage", {});
            }
        }
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Units")
    }
    BodyText {
        visible: Yard.units.length === 0
        Layout.fillWidth: true
        text: qsTr("No unit yet. Add the first one below.")
    }
    Repeater {
        model: Yard.units
        Press {
            id: unit
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: modelData.id + (modelData.lockedOut ? " · " + qsTr("locked out") : "")
            note: mark.text
            onPressedFully: page.open("UnitPage", {
                unit: modelData.id
            })
            StateMark {
                id: mark
                visible: false
                state_: unit.modelData.state
            }
        }
    }
    actions: [
        Press {
            Layout.fillWidth: true
            text: qsTr("Add a unit")
            onPressedFully: page.open("UnitEditPage", {})
        },
        Press {
            Layout.fillWidth: true
            text: qsTr("Settings")
            onPressedFully: page.open("SettingsPage", {})
        }
    ]
}
