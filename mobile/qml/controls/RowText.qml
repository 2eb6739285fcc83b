// SPDX-License-Identifier: GPL-3.0-or-later
// A row of a document: what it is, what it says, a sign for its verdict, what else there is to say.
import QtQuick
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: row
    property var content: ({})
    Layout.fillWidth: true
    spacing: 0
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: row.content.label
    }
    BodyText {
        Layout.fillWidth: true
        wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        color: row.content.verdict === "failed" ? Theme.bad : row.content.verdict === "passed" ? Theme.good : Theme.ink
        font.bold: row.content.verdict.length > 0
        text: (row.content.verdict === "passed" ? "✓ " : row.content.verdict === "failed" ? "✖ " : row.content.verdict === "warning" ? "⚠ " : "") + row.content.value
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        wrapMode: Text.WrapAtWordBoundaryOrAnywhere
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: row.content.note
    }
}
