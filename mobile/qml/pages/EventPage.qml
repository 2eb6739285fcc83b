// SPDX-License-Identifier: GPL-3.0-or-later
// Something happened to a machine, after which its scale has to be proved again.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    property var attachments: []
    property string event: ""
    property string attachment: ""
    title: qsTr("What happened to %1?").arg(unit)
    BodyText {
        Layout.fillWidth: true
        text: qsTr("It is sealed with your key as a record of its own. From then on the scale is due, until it is proved again.")
    }
    Choice {
        label: qsTr("What happened")
        options: Yard.events()
        value: page.event
        onChosen: value => page.event = value
    }
    Choice {
        visible: page.attachments.length > 1
        label: qsTr("With which attachment")
        options: [
            {
                value: "",
                text: qsTr("With any of them")
            },
            ...page.attachments.map(id => ({
                        value: id,
                        text: id
                    }))
        ]
        value: page.attachment
        onChosen: value => page.attachment = value
    }
    Field {
        id: note
        label: qsTr("In your words (may stay empty)")
    }
    Press {
        Layout.fillWidth: true
        kind: "main"
        text: qsTr("Seal it")
        enabled: page.event.length > 0
        onPressedFully: {
            Yard.noteEvent(page.unit, page.attachment, page.event, note.text);
            page.back();
        }
    }
}
