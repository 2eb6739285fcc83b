// SPDX-License-Identifier: GPL-3.0-or-later
// How a scale stands: a sign and a word, colour only besides.
import QtQuick
import Hingepin

BodyText {
    property string state_: ""
    readonly property var known: ({
            "ready": ["✓", qsTr("ready"), Theme.good],
            "due-soon": ["◷", qsTr("due soon"), Theme.warn],
            "due": ["◷", qsTr("due"), Theme.bad],
            "restricted": ["⚠", qsTr("restricted"), Theme.warn],
            "do-not-use": ["✖", qsTr("do not use"), Theme.bad],
            "not-calibrated": ["○", qsTr("not calibrated"), Theme.faintInk]
        })
    readonly property var shown: known[state_] ?? ["○", state_, Theme.faintInk]
    text: shown[0] + " " + shown[1]
    color: shown[2]
    font.bold: true
}
