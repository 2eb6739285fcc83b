// SPDX-License-Identifier: GPL-3.0-or-later
// One unit: how it stands with each attachment, what can be begun, what was done.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    readonly property var units: Yard.units
    readonly property var records: Yard.records
    readonly property var entry: units.find(each => each.id === unit) ?? ({
            pairs: [],
            state: ""
        })
    title: unit
    Component.onCompleted: Yard.readRecords(unit)
    readonly property var checkOut: records.find(each => each.procedure === "check-out" && each.phase === "done")
    readonly property var returnCheck: records.find(each => each.procedure === "return-check")
    StateMark {
        Layout.fillWidth: true
        state_: page.entry.state
    }
    Repeater {
        model: page.entry.pairs
        Card {
            id: pair
            required property var modelData
            BodyText {
                Layout.fillWidth: true
                font.bold: true
                text: qsTr("With %1").arg(pair.modelData.attachment)
            }
            StateMark {
                Layout.fillWidth: true
                state_: pair.modelData.state
            }
            Repeater {
                model: pair.modelData.restrictions
                BodyText {
                    required property string modelData
                    Layout.fillWidth: true
                    color: Theme.warn
                    text: "⚠ " + modelData
                }
            }
            BodyText {
                visible: pair.modelData.due > 0
                font.bold: true
                Layout.fillWidth: true
                text: qsTr("Due again %1").arg(App.date(pair.modelData.due))
            }
            Repeater {
                model: pair.modelData.why
                BodyText {
                    required property string modelData
                    Layout.fillWidth: true
                    text: modelData
                }
            }
            BodyText {
                visible: pair.modelData.stops.length > 0
                Layout.fillWidth: true
                font.bold: true
                text: qsTr("Stops: what to set")
            }
            Repeater {
                model: pair.modelData.stops
                BodyText {
                    required property string modelData
                    Layout.fillWidth: true
                    text: modelData
                }
            }
            Press {
                visible: pair.modelData.record.length > 0
                Layout.fillWidth: true
                text: qsTr("Save its label as a PDF")
                onPressedFully: Exporter.label(page.unit, pair.modelData.attachment)
            }
            Press {
                Layout.fillWidth: true
                text: qsTr("Its zero and span over the months")
                onPressedFully: page.open("HistoryPage", {
                    unit: page.unit,
                    attachment: pair.modelData.attachment
                })
            }
            Press {
                Layout.fillWidth: true
                text: qsTr("A disputed load: what was it worth?")
                onPressedFully: page.open("DisputePage", {
                    unit: page.unit,
                    attachment: pair.modelData.attachment
                })
            }
        }
    }
    Press {
        Layout.fillWidth: true
        kind: "main"
        text: qsTr("Begin a job")
        onPressedFully: page.open("BeginPage", {
            unit: page.unit
        })
    }
    Press {
        visible: page.entry.hasLinkage === false
        Layout.fillWidth: true
        text: qsTr("Survey its linkage")
        note: qsTr("Its pins are not on file: a tape and an inclinometer find them, and its scale weighs more surely")
        onPressedFully: page.open("BeginPage", {
            unit: page.unit,
            procedure: "linkage-survey"
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Something happened to it")
        note: qsTr("Repaired, welded, overloaded, battery lost: the scale is due again")
        onPressedFully: page.open("EventPage", {
            unit: page.unit,
            attachments: page.entry.pairs.map(each => each.attachment)
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Edit the unit")
        onPressedFully: page.open("UnitEditPage", {
            unit: page.unit
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("How its proofs are judged")
        onPressedFully: page.open("TermsPage", {
            unit: page.unit
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Attachments")
        onPressedFully: page.open("AttachmentsPage", {})
    }
    SavedFile {}
    Press {
        visible: page.checkOut !== undefined && page.returnCheck !== undefined
        Layout.fillWidth: true
        text: qsTr("Compare check-out and return")
        onPressedFully: page.open("ComparePage", {
            before: page.checkOut.record,
            after: page.returnCheck.record
        })
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Records")
    }
    BodyText {
        visible: Yard.records.length === 0
        Layout.fillWidth: true
        text: qsTr("None yet.")
    }
    Repeater {
        model: Yard.records
        Press {
            id: record
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: (modelData.phase === "done" ? "✓ " : modelData.phase.length > 0 ? "✖ " : "✎ ") + modelData.title
            note: App.dateAndTime(modelData.time) + (modelData.trusted ? "" : " · ⚠ " + (modelData.findings.length > 0 ? modelData.findings[0] : qsTr("not trusted"))) + (modelData.corrected ? " · " + qsTr("corrected") : "")
            enabled: modelData.phase.length > 0
            onPressedFully: page.open("RecordPage", {
                record: modelData.record
            })
        }
    }
}
