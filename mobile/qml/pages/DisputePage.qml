// SPDX-License-Identifier: GPL-3.0-or-later
// A disputed load: between which errors a scale stood on a day, by the proofs before and after it.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    property string attachment: ""
    readonly property bool isDay: /^\d{4}-\d{2}-\d{2}$/.test(day.text.trim())
    title: qsTr("What was this scale worth?")
    Component.onCompleted: {
        Yard.readDispute("", "", "");
        Exporter.clear();
    }
    BodyText {
        Layout.fillWidth: true
        text: qsTr("%1 with %2").arg(unit).arg(attachment)
    }
    Field {
        id: day
        label: qsTr("Day of the load, as 2026-05-04")
        inputMethodHints: Qt.ImhDate
        problem: text.length === 0 || page.isDay ? "" : qsTr("Year, month and day, as 2026-05-04")
    }
    Press {
        Layout.fillWidth: true
        kind: "main"
        text: qsTr("Tell")
        enabled: page.isDay
        onPressedFully: Yard.readDispute(page.unit, page.attachment, day.text)
    }
    Repeater {
        model: Yard.dispute
        BodyText {
            required property string modelData
            Layout.fillWidth: true
            text: modelData
        }
    }
    Press {
        visible: Yard.dispute.length > 0
        Layout.fillWidth: true
        text: qsTr("Save it with the records behind it")
        note: qsTr("A folder that any program for these records can verify")
        onPressedFully: Exporter.dispute(page.unit, page.attachment, day.text)
    }
    SavedFile {}
}
