// SPDX-License-Identifier: GPL-3.0-or-later
// Keys for a number, large enough for gloves. A keyboard types the same.
import QtQuick
import QtQuick.Layouts
import Hingepin

FocusScope {
    id: pad
    property string typed: ""
    readonly property string mark: App.decimalMark
    readonly property bool isEmpty: typed.length === 0 || typed === "-"
    signal entered
    implicitHeight: grid.implicitHeight
    implicitWidth: grid.implicitWidth

    function put(key: string) {
        if (key === "del") {
            typed = typed.slice(0, -1);
        } else if (key === "sign") {
            typed = typed.startsWith("-") ? typed.slice(1) : "-" + typed;
        } else if (key === "mark") {
            if (!typed.includes(mark))
                typed += typed.length === 0 || typed === "-" ? "0" + mark : mark;
        } else if (typed.length < 12) {
            typed += key;
        }
    }
    Keys.onPressed: event => {
        if (event.text >= "0" && event.text <= "9" && event.text.length === 1)
            put(event.text);
        else if (event.text === "." || event.text === ",")
            put("mark");
        else if (event.text === "-")
            put("sign");
        else if (event.key === Qt.Key_Backspace)
            put("del");
        else if ((event.key === Qt.Key_Return || event.key === Qt.Key_Enter) && !isEmpty)
            entered();
        else
            return;
        event.accepted = true;
    }

    GridLayout {
        id: grid
        width: parent.width
        columns: 4
        rowSpacing: 6
        columnSpacing: Math.min(6, (pad.width - 4 * Theme.target) / 3)
        LayoutMirroring.enabled: false
        LayoutMirroring.childrenInherit: true
        Repeater {
            model: ["7", "8", "9", "del", "4", "5", "6", "sign", "1", "2", "3", "mark", "0"]
            Press {
                id: key
                required property string modelData
                Layout.fillWidth: true
                Layout.columnSpan: modelData === "0" ? 3 : 1
                Layout.preferredWidth: 1
                hold_ms: 0
                leftPadding: 2
                rightPadding: 2
                text: modelData === "del" ? "⌫" : modelData === "sign" ? "±" : modelData === "mark" ? pad.mark : modelData
                Accessible.name: modelData === "del" ? qsTr("Delete the last digit") : modelData === "sign" ? qsTr("Plus or minus") : modelData === "mark" ? qsTr("Decimal mark") : modelData
                focusPolicy: Qt.NoFocus
                onPressedFully: pad.put(modelData)
            }
        }
    }
}
