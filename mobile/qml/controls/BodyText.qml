// SPDX-License-Identifier: GPL-3.0-or-later
// Running text: wraps, follows the text size and the direction of the language.
import QtQuick
import Hingepin

Text {
    id: body
    property int size: Theme.bodyText
    // Large letters get smaller where the longest word would break: a signal word is one word.
    readonly property string longestWord: App.textScale > 1 ? longestOf(text) : ""
    readonly property bool isTooWide: width > 0 && metrics.width > width && longestWord.length < 32
    function longestOf(words: string): string {
        return words.split(/\s+/).reduce((longest, word) => word.length > longest.length ? word : longest, "");
    }
    color: Theme.ink
    font.pixelSize: isTooWide ? Math.max(Math.floor(size * width / metrics.width), Math.round(size / 2)) : size
    wrapMode: Text.Wrap
    horizontalAlignment: Text.AlignLeft
    textFormat: Text.PlainText
    Accessible.role: Accessible.StaticText
    Accessible.name: text
    TextMetrics {
        id: metrics
        font.family: body.font.family
        font.bold: body.font.bold
        font.pixelSize: body.size
        text: body.longestWord
    }
}
