// SPDX-License-Identifier: GPL-3.0-or-later
// The phone's camera, once it may be used.
import QtQuick
import QtQuick.Layouts
import QtMultimedia as Multimedia
import Hingepin

ColumnLayout {
    id: view
    signal taken(string path)
    spacing: Theme.gap
    Multimedia.CaptureSession {
        camera: Multimedia.Camera {
            active: true
        }
        imageCapture: Multimedia.ImageCapture {
            id: capture
            onImageSaved: (id, path) => view.taken(path)
        }
        videoOutput: output
    }
    Multimedia.VideoOutput {
        id: output
        Layout.fillWidth: true
        implicitHeight: width * 3 / 4
    }
    Press {
        Layout.fillWidth: true
        kind: "main"
        text: qsTr("Release the shutter")
        onPressedFully: capture.captureToFile(Photos.newPhotoPath())
    }
}
