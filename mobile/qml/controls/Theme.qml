// SPDX-License-Identifier: GPL-3.0-or-later
// The one home of colours, sizes and times. Three looks: day, night, sunlight (black on white, thick lines).
pragma Singleton

import QtQuick
import Hingepin

QtObject {
    readonly property int look: App.look
    readonly property bool isNight: look === App.Night
    readonly property bool isSunlight: look === App.Sunlight

    readonly property color ground: isNight ? "#14181c" : isSunlight ? "#ffffff" : "#f3f1ea"
    readonly property color surface: isNight ? "#20262c" : "#ffffff"
    readonly property color ink: isNight ? "#f0eee8" : isSunlight ? "#000000" : "#1c2126"
    readonly property color faintInk: isNight ? "#b9bfc4" : isSunlight ? "#000000" : "#485158"
    readonly property color line: isNight ? "#6d777f" : isSunlight ? "#000000" : "#80857e"
    readonly property color accent: isNight ? "#8fd0dc" : isSunlight ? "#000000" : "#0d5261"
    readonly property color accentInk: isNight ? "#0b1d21" : "#ffffff"
    readonly property color good: isNight ? "#86d69a" : isSunlight ? "#003d10" : "#195b2e"
    readonly property color bad: isNight ? "#ff9d90" : isSunlight ? "#7a0000" : "#9b1e15"
    readonly property color warn: isNight ? "#f2c46b" : isSunlight ? "#5c3a00" : "#704700"

    // Signal words: the safety colours of ISO 3864-4 and ANSI Z535.1, from memory; the word is always beside them.
    function signalColor(word: string): color {
        return word === "danger" ? "#b3001b" : word === "warning" ? "#ff7a00" : word === "caution" ? "#ffd100" : "#0b4ea2";
    }
    function signalInk(word: string): color {
        return word === "danger" || word === "notice" ? "#ffffff" : "#000000";
    }

    readonly property real scale: App.textScale
    readonly property int smallText: Math.round(14 * scale)
    readonly property int bodyText: Math.round(17 * scale)
    // Bold already; at twice the size it would break its words.
    readonly property int headingText: Math.round(22 * Math.min(scale, 1.6))
    readonly property int readingText: Math.round(36 * scale)

    readonly property int target: App.gloves ? 72 : 56
    readonly property int gap: 12
    readonly property int margin: 16
    readonly property int lineWidth: isSunlight ? 3 : 1
    readonly property int radius: 6

    // A press right after the screen has changed was meant for what stood there before. Not readonly: a test whose clock runs
    // faster shortens them alike.
    property int settle_ms: 300
    property int movementHold_ms: 800
    property int wetHold_ms: 350
}
