// SPDX-License-Identifier: GPL-3.0-or-later
// A setting that is on or off.
import QtQuick
import QtQuick.Layouts
import Hingepin

Press {
    property bool on: false
    property string words: ""
    Layout.fillWidth: true
    kind: "quiet"
    hold_ms: 0
    text: (on ? "☑ " : "☐ ") + words
    Accessible.role: Accessible.CheckBox
    Accessible.name: words
    Accessible.checkable: true
    Accessible.checked: on
}
