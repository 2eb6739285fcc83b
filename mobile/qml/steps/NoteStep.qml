// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import Hingepin

StepPanel {
    focus: true
    actions: {
        const list = [
            {
                text: qsTr("Write it down"),
                kind: "main",
                enabled: note.text.trim().length > 0,
                run: () => Job.answer("written", note.text)
            }
        ];
        if (Job.view.optional)
            list.push({
                text: qsTr("Nothing to note"),
                run: () => Job.answer("skipped")
            });
        return list;
    }
    Field {
        id: note
        label: qsTr("In your own words")
        onAccepted: if (text.trim().length > 0)
            Job.answer("written", text)
    }
}
