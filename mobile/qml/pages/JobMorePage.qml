// SPDX-License-Identifier: GPL-3.0-or-later
// What was done so far in this job, and the ways out of it.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property bool asked: false
    title: qsTr("This job")
    Press {
        Layout.fillWidth: true
        text: qsTr("Go on later")
        note: qsTr("Nothing is lost; it opens again at this step")
        onPressedFully: {
            Job.close();
            page.home();
        }
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Live readings")
        note: Live.source === "none" ? qsTr("None are open") : Live.alive ? qsTr("They are coming") : qsTr("They have stopped")
        onPressedFully: page.open("FeedPage", {})
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Charts")
        note: qsTr("Passes, what the fit leaves, errors of the proof")
        onPressedFully: page.open("ChartsPage", {})
    }
    Press {
        visible: !page.asked && Job.view.phase === "running"
        Layout.fillWidth: true
        kind: "bad"
        text: qsTr("Give the job up")
        onPressedFully: page.asked = true
    }
    Card {
        visible: page.asked
        edge: Theme.bad
        BodyText {
            Layout.fillWidth: true
            text: qsTr("The job then ends as given up: the machine is made safe, and its scale is tagged not to be used.")
        }
        Press {
            Layout.fillWidth: true
            kind: "bad"
            hold_ms: Theme.movementHold_ms
            text: qsTr("Hold to give up")
            onPressedFully: {
                Job.abandon();
                page.back();
            }
        }
        Press {
            Layout.fillWidth: true
            text: qsTr("Keep on working")
            onPressedFully: page.asked = false
        }
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: Job.view.comesFirst
    }
    Heading {
        Layout.fillWidth: true
        text: qsTr("Done so far, the newest first")
    }
    Repeater {
        model: Job.view.history
        ColumnLayout {
            id: entry
            required property var modelData
            Layout.fillWidth: true
            spacing: 2
            BodyText {
                Layout.fillWidth: true
                text: entry.modelData.text
                color: entry.modelData.counts ? Theme.ink : Theme.faintInk
            }
            BodyText {
                Layout.fillWidth: true
                font.bold: true
                color: entry.modelData.failed ? Theme.bad : Theme.ink
                text: (entry.modelData.failed ? "✖ " : "✓ ") + entry.modelData.value + (entry.modelData.counts ? "" : " " + qsTr("(does not count)"))
            }
            Rectangle {
                Layout.fillWidth: true
                implicitHeight: 1
                color: Theme.line
            }
        }
    }
}
