// SPDX-License-Identifier: GPL-3.0-or-later
// A button for gloves and wet glass: large, deaf for a moment after the screen changed, and, where asked, only
// pressed when it was held. `kind`: "main", "plain", "bad", "quiet".
import QtQuick
import QtQuick.Controls.Basic
import Hingepin

AbstractButton {
    id: press

    property string kind: "plain"
    property int hold_ms: App.wet ? Theme.wetHold_ms : 0
    property string note: ""
    readonly property bool isMain: kind === "main"
    readonly property color face: !enabled ? "transparent" : isMain ? Theme.accent : Theme.surface
    readonly property color inkColor: !enabled ? Theme.faintInk : isMain ? Theme.accentInk : kind === "bad" ? Theme.bad : Theme.ink

    readonly property bool settled: !settle.running

    signal pressedFully

    Component.onCompleted: settle.restart()
    onTextChanged: settle.restart()
    onVisibleChanged: if (visible) settle.restart()
    onClicked: if (hold_ms === 0 && !settle.running) pressedFully()
    onPressed: if (hold_ms > 0 && !settle.running) holding.restart()
    onReleased: holding.stop()
    onCanceled: holding.stop()

    implicitHeight: Math.max(Theme.target, label.implicitHeight + 2 * Theme.gap)
    implicitWidth: Math.max(Theme.target, Math.ceil(caption.implicitWidth) + leftPadding + rightPadding)
    leftPadding: Theme.margin
    rightPadding: Theme.margin
    hoverEnabled: false
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: text + (note.length > 0 ? ", " + note : "")
    Accessible.onPressAction: pressedFully()
    Keys.onReturnPressed: pressedFully()
    Keys.onEnterPressed: pressedFully()

    Timer {
        id: settle
        interval: Theme.settle_ms
    }
    NumberAnimation {
        id: holding
        target: fill
        property: "share"
        from: 0
        to: 1
        duration: press.hold_ms
        onFinished: press.pressedFully()
        onStopped: fill.share = 0
    }

    contentItem: Item {
        implicitHeight: label.implicitHeight
        Column {
            id: label
            spacing: 2
            width: parent.width
            anchors.verticalCenter: parent.verticalCenter
            Text {
                id: caption
                width: parent.width
                text: press.text
                color: press.inkColor
                font.pixelSize: Theme.bodyText
                font.bold: press.isMain && press.enabled
                wrapMode: Text.Wrap
                horizontalAlignment: press.kind === "quiet" ? Text.AlignLeft : Text.AlignHCenter
                textFormat: Text.PlainText
                Accessible.ignored: true
            }
            Text {
                visible: text.length > 0
                width: parent.width
                text: press.note
                color: press.isMain && press.enabled ? Theme.accentInk : Theme.faintInk
                font.pixelSize: Theme.smallText
                wrapMode: Text.Wrap
                horizontalAlignment: press.kind === "quiet" ? Text.AlignLeft : Text.AlignHCenter
                textFormat: Text.PlainText
                Accessible.ignored: true
            }
        }
    }
    background: Rectangle {
        radius: Theme.radius
        color: press.face
        // Told by the thickness of the edge, too: thin where it can't be pressed, thick while it is.
        border.width: !press.enabled ? 1 : press.down ? Theme.lineWidth + 3 : press.activeFocus ? Math.max(3, Theme.lineWidth) : press.isMain ? 0 : Theme.lineWidth + 1
        border.color: !press.enabled ? Theme.line : press.down ? (press.isMain ? Theme.accentInk : Theme.ink) : press.activeFocus ? Theme.accent : press.kind === "bad" ? Theme.bad : Theme.line
        Rectangle {
            id: fill
            property real share: 0
            width: parent.width * share
            height: parent.height
            radius: parent.radius
            color: press.isMain ? Theme.good : Theme.accent
            opacity: 0.2
        }
    }
}
