// SPDX-License-Identifier: GPL-3.0-or-later
// A photo or a file, kept by its hash.
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    actions: {
        const list = [];
        if (Job.view.photo && Photos.present)
            list.push({
                text: qsTr("Take a photo"),
                kind: "main",
                run: () => Photos.askForCamera()
            });
        if (Job.view.practice)
            list.push({
                text: qsTr("Use a practice picture"),
                note: qsTr("Invented, and marked so"),
                kind: Photos.present ? "plain" : "main",
                run: () => Job.answerWithBytes("taken", Photos.practicePicture(Job.view.text), "practice.png")
            });
        list.push({
            text: Job.view.photo ? qsTr("Choose a picture") : qsTr("Choose a file"),
            kind: list.length === 0 ? "main" : "plain",
            run: () => dialog.open()
        });
        if (Job.view.optional)
            list.push({
                text: qsTr("Leave it out"),
                run: () => Job.answer("skipped")
            });
        return list;
    }
    Connections {
        target: Photos
        function onCameraAllowed() {
            refused.visible = false;
            camera.active = true;
        }
        function onCameraRefused() {
            refused.visible = true;
        }
    }
    BodyText {
        id: refused
        visible: false
        Layout.fillWidth: true
        color: Theme.warn
        text: "⚠ " + qsTr("The phone does not let the app use its camera. Allow it in the phone's settings, or choose a picture.")
        Accessible.role: Accessible.AlertMessage
    }
    FileDialog {
        id: dialog
        nameFilters: Job.view.photo ? [qsTr("Pictures (%1)").arg("*.jpg *.jpeg *.png *.heic")] : [qsTr("All files (%1)").arg("*")]
        onAccepted: Job.answer("taken", "", [String(selectedFile)])
    }
    Loader {
        id: camera
        active: false
        visible: active
        Layout.fillWidth: true
        source: active ? Qt.resolvedUrl("CameraView.qml") : ""
        Connections {
            target: camera.item
            ignoreUnknownSignals: true
            function onTaken(path) {
                camera.active = false;
                Job.answer("taken", "", [path]);
            }
        }
    }
}
