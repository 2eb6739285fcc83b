// SPDX-License-Identifier: GPL-3.0-or-later
// What every step shows: its sentence and how it is done. `actions`: a list of {text, note, kind, hold_ms, enabled, run}.
import QtQuick
import QtQuick.Layouts
import Hingepin

FocusScope {
    id: panel
    property var actions: []
    property bool showsText: true
    /// What has to be read first: where it does not fit the screen, its presses stand below it, not beside it.
    property bool readFirst: false
    /// Where what is always at hand is laid, beside the presses.
    property Item tray: null
    signal leave(string page, var properties)
    /// To another screen and back here.
    signal visit(string page, var properties)
    default property alias content: below.data
    implicitHeight: column.implicitHeight
    width: parent ? parent.width : 0
    ColumnLayout {
        id: column
        width: parent.width
        spacing: Theme.gap
        Heading {
            visible: panel.showsText && text.length > 0
            Layout.fillWidth: true
            text: Job.view.text
        }
        BodyText {
            visible: panel.showsText && text.length > 0
            Layout.fillWidth: true
            text: Job.view.detail
        }
        ColumnLayout {
            id: below
            Layout.fillWidth: true
            spacing: Theme.gap
        }
    }
}
