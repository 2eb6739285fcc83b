// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    title: qsTr("Attachments")
    Component.onCompleted: Profiles.readAttachments()
    BodyText {
        visible: Profiles.attachments.length === 0
        Layout.fillWidth: true
        text: qsTr("None yet.")
    }
    Repeater {
        model: Profiles.attachments
        Press {
            required property string modelData
            Layout.fillWidth: true
            kind: "quiet"
            text: modelData
            onPressedFully: page.open("AttachmentEditPage", {
                attachment: modelData
            })
        }
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Add an attachment")
            onPressedFully: page.open("AttachmentEditPage", {})
        }
    ]
}
