// SPDX-License-Identifier: GPL-3.0-or-later
// The first minute: language, then a yard of one's own or the invented one.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property var languages: App.languages
    title: "Hingepin"
    canGoBack: false
    BodyText {
        Layout.fillWidth: true
        text: qsTr("Calibrates the scale and the automatic stops of a wheel loader, step by step, with no signal needed, and keeps a signed record.")
    }
    BodyText {
        Layout.fillWidth: true
        text: qsTr("The law and the rules of the site, the machine maker's manual and licensed practice come first.")
        font.bold: true
    }
    Choice {
        label: qsTr("Language")
        options: page.languages.map(tag => ({
                    value: tag,
                    text: App.languageName(tag)
                }))
        value: App.language
        onChosen: value => App.language = value
    }
    BodyText {
        visible: App.progress > 0
        Layout.fillWidth: true
        text: qsTr("Making the demo yard: %1 %").arg(Math.round(App.progress * 100))
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Make my yard")
            note: qsTr("Your key and the yard's list of who may sign")
            onPressedFully: page.open("MakeYardPage", {})
        },
        Press {
            Layout.fillWidth: true
            text: qsTr("Join a yard")
            note: qsTr("It is on another phone, whose owner lets you in")
            onPressedFully: page.open("JoinPage", {})
        },
        Press {
            Layout.fillWidth: true
            text: qsTr("Look round the demo yard")
            note: qsTr("Invented machines, people and records, to practise on")
            enabled: !App.busy
            onPressedFully: App.openDemo()
        }
    ]
}
