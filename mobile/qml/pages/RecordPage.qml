// SPDX-License-Identifier: GPL-3.0-or-later
// A record as a document: what was done, by whom, with which verdicts; and what can be handed over.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string record: ""
    property bool isCorrecting: false
    readonly property var document: Yard.document
    title: document.title ?? qsTr("Record")
    Component.onCompleted: {
        Exporter.clear();
        Yard.readDocument(record);
        Syncer.readRecord(record);
    }
    Connections {
        target: Syncer
        function onDone() {
            Syncer.readRecord(page.record);
        }
    }
    Repeater {
        model: page.document.stamps ?? []
        Card {
            id: stamp
            required property string modelData
            edge: Theme.warn
            BodyText {
                Layout.fillWidth: true
                font.bold: true
                text: "⚠ " + stamp.modelData
            }
        }
    }
    Repeater {
        model: page.document.sections ?? []
        ColumnLayout {
            id: section
            required property var modelData
            Layout.fillWidth: true
            spacing: 4
            Heading {
                Layout.fillWidth: true
                text: section.modelData.title
            }
            Repeater {
                model: section.modelData.rows
                RowText {
                    required property var modelData
                    content: modelData
                }
            }
        }
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        font.bold: true
        text: page.document.notForTrade ?? ""
    }
    Heading {
        visible: Syncer.recordState.length > 0
        Layout.fillWidth: true
        text: qsTr("Where it stands")
    }
    Repeater {
        model: Syncer.recordState
        RowText {
            required property var modelData
            content: modelData
        }
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Charts")
        note: qsTr("Passes, what the fit leaves, errors of the proof")
        onPressedFully: page.open("ChartsPage", {
            record: page.record
        })
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Hand over")
    }
    Choice {
        label: qsTr("Paper")
        options: [
            {
                value: false,
                text: "A4"
            },
            {
                value: true,
                text: "Letter"
            }
        ]
        value: Exporter.letter
        onChosen: value => Exporter.letter = value
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Save as a PDF")
        onPressedFully: Exporter.document(page.record)
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Calibration certificate")
        note: qsTr("To print, or for programs")
        onPressedFully: page.open("CertificatePage", {
            record: page.record
        })
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Save the sealed record itself")
        note: qsTr("Any program that knows JSON Web Signatures can check it")
        onPressedFully: Exporter.file(page.record)
    }
    Press {
        visible: page.document.verdict === "failed"
        Layout.fillWidth: true
        text: qsTr("Save the tag as a PDF")
        onPressedFully: Exporter.tag(page.record)
    }
    SavedFile {}
    Press {
        Layout.fillWidth: true
        text: qsTr("Sign it too")
        note: qsTr("A further signature, with your own key")
        onPressedFully: Yard.sign(page.record)
    }
    Press {
        visible: !page.isCorrecting
        Layout.fillWidth: true
        text: qsTr("Correct it")
        note: qsTr("By a new record that names this one; this one stays as it is")
        onPressedFully: page.isCorrecting = true
    }
    ColumnLayout {
        visible: page.isCorrecting
        Layout.fillWidth: true
        Field {
            id: correction
            label: qsTr("What was wrong, and what is right")
        }
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Seal the correction")
            enabled: correction.text.trim().length > 0
            onPressedFully: {
                Yard.amend(page.record, correction.text);
                page.isCorrecting = false;
            }
        }
    }
}
