// SPDX-License-Identifier: GPL-3.0-or-later
// Running text: wraps, follows the text size and the direction of the language.
import QtQuick
import Hingepin

Text {
    color: Theme.ink
    font.pixelSize: Theme.bodyText
    wrapMode: Text.Wrap
    horizontalAlignment: Text.AlignLeft
    textFormat: Text.PlainText
    Accessible.role: Accessible.StaticText
    Accessible.name: text
}
