// SPDX-License-Identifier: GPL-3.0-or-later
// The phone as a level, by two lays half a turn apart, so that its own zero error cancels.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    title: qsTr("The phone as a level")
    CautionPanel {
        signalWord: "danger"
        signalText: App.signalName("danger")
        hazard: qsTr("A raised boom can come down.")
        consequence: qsTr("Whoever is under it is crushed.")
        avoidance: qsTr("Measure on a raised boom only with the engine off, the key removed, the boom support fitted, and nobody under it.")
    }
    BodyText {
        Layout.fillWidth: true
        text: !Level.present ? qsTr("This phone has no accelerometer. Use an inclinometer and type what it shows.") : Level.result.length > 0 ? qsTr("Slope along the phone's long side, as it lay first:") : Level.first ? qsTr("2. Turn the phone half round on the same spot, its top where its foot was. Hands off, then measure again.") : qsTr("1. Lay the phone flat on the bucket floor, the boom or the ground, its long side along the machine. Hands off, then measure.")
    }
    Heading {
        visible: Level.result.length > 0
        Layout.fillWidth: true
        font.pixelSize: Theme.readingText
        text: Level.result
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        color: Theme.bad
        text: Level.trouble.length > 0 ? "✖ " + Level.trouble : ""
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            visible: Level.present && Level.result.length === 0
            enabled: !Level.measuring
            text: Level.measuring ? qsTr("Measuring: keep your hands off") : qsTr("Measure")
            onPressedFully: Level.measure()
        },
        Press {
            Layout.fillWidth: true
            visible: Level.first
            text: qsTr("Begin again")
            onPressedFully: Level.again()
        }
    ]
}
