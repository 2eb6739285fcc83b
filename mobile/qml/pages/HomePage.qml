// SPDX-License-Identifier: GPL-3.0-or-later
// What a person sees first, by the role that they act in.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    title: App.demo ? qsTr("Demo yard (invented)") : "Hingepin"
    canGoBack: false
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        text: qsTr("%1, %2").arg(App.person).arg(App.roleName(App.role))
    }
    Heading {
        visible: Yard.running.length > 0
        Layout.fillWidth: true
        text: qsTr("Go on with")
    }
    Repeater {
        model: Yard.running
        Press {
            id: job
            required property var modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: "▶ " + modelData.title
            note: modelData.unit
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
            text: modelData.id
            note: " "
            Accessible.name: modelData.id + ", " + mark.text
            onPressedFully: page.open("UnitPage", {
                unit: modelData.id
            })
            StateMark {
                id: mark
                anchors.right: parent.right
                anchors.bottom: parent.bottom
                anchors.margins: Theme.gap
                font.pixelSize: Theme.smallText
                state_: unit.modelData.state
                Accessible.ignored: true
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
