// SPDX-License-Identifier: GPL-3.0-or-later
// A screen: a title with a way back, what it shows (it scrolls), and its presses within the thumb's reach: below, or
// beside where the phone lies on its side.
import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import Hingepin

FocusScope {
    id: frame
    property string title: ""
    property bool canGoBack: true
    property bool busy: App.busy
    default property alias content: column.data
    property alias actions: actionColumn.data
    readonly property bool isWide: width > height && height < 560
    readonly property bool hasActions: actionColumn.implicitHeight > 0
    /// How much of the actions may stand below before they scroll, as a share of the height.
    property real mostActions: 0.6
    /// What can be seen of the content without scrolling, with one press below it.
    readonly property real room: height - header.height - margin - (isWide ? 0 : Theme.target * 1.3 + 2 * Theme.gap)
    readonly property int margin: width < 340 ? Theme.margin / 2 : Theme.margin
    signal back

    function scrollToTop() {
        flick.contentY = 0;
    }

    Accessible.role: Accessible.Pane
    Accessible.name: title

    Rectangle {
        anchors.fill: parent
        color: Theme.ground
    }
    RowLayout {
        id: header
        x: Theme.margin / 2
        width: parent.width - Theme.margin
        height: Math.max(Theme.target, heading.implicitHeight + Theme.gap, frame.canGoBack ? backPress.implicitHeight + 4 : 0)
        spacing: Theme.gap / 2
        Press {
            id: backPress
            visible: frame.canGoBack
            hold_ms: 0
            kind: "plain"
            leftPadding: 4
            rightPadding: 4
            text: App.rightToLeft ? "→" : "←"
            Accessible.name: qsTr("Back")
            onPressedFully: frame.back()
        }
        Heading {
            id: heading
            Layout.fillWidth: true
            Layout.leftMargin: frame.canGoBack ? 0 : Theme.gap / 2
            text: frame.title
            font.pixelSize: Math.min(24, Math.round(Theme.bodyText * 1.1))
        }
        BusyIndicator {
            visible: running
            running: frame.busy
            implicitWidth: 32
            implicitHeight: 32
            Accessible.name: qsTr("Working")
        }
    }
    Rectangle {
        anchors.top: header.bottom
        width: parent.width
        height: Theme.lineWidth
        color: Theme.line
    }
    Flickable {
        id: flick
        anchors.top: header.bottom
        anchors.topMargin: Theme.lineWidth
        anchors.left: parent.left
        anchors.right: frame.isWide && frame.hasActions ? actionFlick.left : parent.right
        anchors.bottom: frame.isWide || !frame.hasActions ? parent.bottom : actionFlick.top
        clip: true
        contentWidth: width
        contentHeight: column.implicitHeight + 2 * Theme.margin
        boundsBehavior: Flickable.StopAtBounds
        ScrollBar.vertical: ScrollBar {
            policy: flick.contentHeight > flick.height ? ScrollBar.AlwaysOn : ScrollBar.AlwaysOff
            width: 8
            Accessible.ignored: true
        }
        ColumnLayout {
            id: column
            x: frame.margin
            y: frame.margin
            width: Math.min(flick.width - 2 * frame.margin, 720)
            spacing: Theme.gap
        }
    }
    Flickable {
        id: actionFlick
        anchors.right: parent.right
        anchors.bottom: parent.bottom
        width: frame.isWide ? Math.round(parent.width * 0.42) : parent.width
        height: !frame.hasActions ? 0 : frame.isWide ? parent.height - header.height : Math.min(contentHeight, Math.round((parent.height - header.height) * frame.mostActions))
        clip: true
        contentWidth: width
        contentHeight: actionColumn.implicitHeight + 2 * Theme.gap
        boundsBehavior: Flickable.StopAtBounds
        Rectangle {
            width: frame.isWide ? Theme.lineWidth : actionFlick.width
            height: frame.isWide ? actionFlick.height : Theme.lineWidth
            color: Theme.line
        }
        ColumnLayout {
            id: actionColumn
            x: frame.margin
            y: Theme.gap
            width: actionFlick.width - 2 * frame.margin
            spacing: 8
        }
    }
}
