// SPDX-License-Identifier: GPL-3.0-or-later
// What the camera sees, for the scanner too.
import QtQuick
import QtMultimedia as Multimedia
import Hingepin

Item {
    implicitHeight: width
    Component.onCompleted: Scanner.watch(output.videoSink)
    Multimedia.CaptureSession {
        camera: Multimedia.Camera {
            active: true
            focusMode: Multimedia.Camera.FocusModeAuto
        }
        videoOutput: output
    }
    Multimedia.VideoOutput {
        id: output
        anchors.fill: parent
        fillMode: Multimedia.VideoOutput.PreserveAspectCrop
    }
}
