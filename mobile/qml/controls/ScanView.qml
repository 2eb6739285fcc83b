// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a QR code with the camera, or from a picture where there is no camera.
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: view
    signal found(string code)
    spacing: Theme.gap
    Layout.fillWidth: true
    Component.onCompleted: if (Photos.present)
        Photos.askForCamera()
    Component.onDestruction: Scanner.watch(null)
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
    Connections {
        target: Scanner
        function onFound(code) {
            empty.visible = false;
            view.found(code);
        }
        function onNothingFound() {
            empty.visible = true;
        }
    }
    BodyText {
        visible: !Photos.present
        Layout.fillWidth: true
        color: Theme.faintInk
        text: qsTr("This device has no camera. Choose a picture of the code.")
    }
    BodyText {
        id: refused
        visible: false
        Layout.fillWidth: true
        color: Theme.warn
        text: "⚠ " + qsTr("The phone does not let the app use its camera. Allow it in the phone's settings, or choose a picture.")
        Accessible.role: Accessible.AlertMessage
    }
    Loader {
        id: camera
        active: false
        visible: active
        Layout.fillWidth: true
        source: active ? Qt.resolvedUrl("ScanCamera.qml") : ""
    }
    BodyText {
        id: empty
        visible: false
        Layout.fillWidth: true
        color: Theme.bad
        text: "✖ " + qsTr("There is no code in this picture. Take it from nearer and straight from the front, the whole code in it.")
        Accessible.role: Accessible.AlertMessage
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Choose a picture of the code")
        onPressedFully: dialog.open()
    }
    FileDialog {
        id: dialog
        nameFilters: [qsTr("Pictures (%1)").arg("*.jpg *.jpeg *.png *.heic")]
        onAccepted: Scanner.lookAtPicture(selectedFile)
    }
}
