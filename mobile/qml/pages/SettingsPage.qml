// SPDX-License-Identifier: GPL-3.0-or-later
// How the app looks, speaks and measures; who is at it; about it.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property var sizes: [1, 1.25, 1.5, 2]
    readonly property var languages: App.languages
    readonly property var roles: App.roles
    title: qsTr("Settings")
    Component.onCompleted: Exporter.clear()
    Choice {
        label: qsTr("Look")
        options: [
            {
                value: App.Day,
                text: qsTr("Day")
            },
            {
                value: App.Night,
                text: qsTr("Night")
            },
            {
                value: App.Sunlight,
                text: qsTr("Sunlight"),
                note: qsTr("Black on white, thick lines")
            }
        ]
        value: App.look
        onChosen: value => App.look = value
    }
    Choice {
        label: qsTr("Text size")
        options: page.sizes.map(size => ({
                    value: size,
                    text: Math.round(size * 100) + " %"
                }))
        value: App.textScale
        onChosen: value => App.textScale = value
    }
    Toggle {
        on: App.gloves
        words: qsTr("Gloves: larger keys")
        onPressedFully: App.gloves = !App.gloves
    }
    Toggle {
        on: App.wet
        words: qsTr("Wet glass: hold a key for it to count")
        onPressedFully: App.wet = !App.wet
    }
    Toggle {
        on: App.sounds
        words: qsTr("Sounds and vibration")
        onPressedFully: App.sounds = !App.sounds
    }
    Toggle {
        on: App.speaks
        words: Cue.hasVoice ? qsTr("Speak the instructions") : qsTr("Speak the instructions (this phone has no voice in this language)")
        onPressedFully: App.speaks = !App.speaks
    }
    Choice {
        label: qsTr("Units")
        options: [
            {
                value: false,
                text: qsTr("Metric: kg, bar, °C, m")
            },
            {
                value: true,
                text: qsTr("US: lb, psi, °F, in")
            }
        ]
        value: App.usUnits
        onChosen: value => App.usUnits = value
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
        visible: App.language !== "en"
        Layout.fillWidth: true
        color: Theme.warn
        text: qsTr("This translation was made by a machine. A native speaker who knows the trade has still to review it.")
    }
    Choice {
        visible: App.roles.length > 1
        label: qsTr("You act as")
        options: page.roles.map(role => ({
                    value: role,
                    text: App.roleName(role)
                }))
        value: App.role
        onChosen: value => App.role = value
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("People who may sign on this phone")
        onPressedFully: page.open("PeoplePage", {})
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("How proofs are judged in this yard")
        note: qsTr("Tolerance and decision rule, where a unit does not say otherwise")
        onPressedFully: page.open("TermsPage", {})
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Exchange with the office")
        note: qsTr("Where records are sent to, and what still waits")
        onPressedFully: page.open("SyncPage", {})
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Live readings")
        onPressedFully: page.open("FeedPage", {})
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("The phone as a level")
        onPressedFully: page.open("LevelPage", {})
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Save the app's log")
        note: qsTr("What it did and what failed, without names: for whoever looks into a fault")
        onPressedFully: Exporter.log()
    }
    SavedFile {}
    Press {
        Layout.fillWidth: true
        text: qsTr("Lock")
        note: qsTr("The next person opens it with their own key")
        onPressedFully: App.lock()
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: qsTr("Hingepin %1. The app is free software under the GNU General Public License, version 3 or later; its engine under the Apache License 2.0. It never writes to a machine. A verdict here does not make a scale legal for trade; that needs the authority in charge.").arg(App.version)
    }
}
