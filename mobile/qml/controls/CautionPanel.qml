// SPDX-License-Identifier: GPL-3.0-or-later
// A caution: signal word with its sign, what the hazard is, what it does to you, how to avoid it.
import QtQuick
import QtQuick.Layouts
import QtQuick.Shapes
import Hingepin

Rectangle {
    id: panel
    property string signalWord: "danger"
    property string signalText: ""
    property string hazard: ""
    property string consequence: ""
    property string avoidance: ""
    implicitHeight: column.implicitHeight + Theme.gap
    Layout.fillWidth: true
    color: Theme.surface
    border.width: Math.max(2, Theme.lineWidth)
    border.color: Theme.ink
    radius: Theme.radius
    Accessible.role: Accessible.AlertMessage
    Accessible.name: signalText + ". " + hazard + " " + consequence + " " + avoidance
    ColumnLayout {
        id: column
        width: parent.width
        spacing: Theme.gap
        Rectangle {
            Layout.fillWidth: true
            implicitHeight: band.implicitHeight + Theme.gap
            color: Theme.signalColor(panel.signalWord)
            radius: Theme.radius
            RowLayout {
                id: band
                anchors.centerIn: parent
                width: parent.width - 2 * Theme.margin
                spacing: Theme.gap
                // The safety alert symbol: a triangle with an exclamation mark; a notice has none (ANSI Z535.4, from memory).
                Item {
                    visible: panel.signalWord !== "notice"
                    implicitWidth: Theme.headingText * 1.4
                    implicitHeight: Theme.headingText * 1.25
                    Shape {
                        anchors.fill: parent
                        ShapePath {
                            fillColor: Theme.signalInk(panel.signalWord)
                            strokeColor: "transparent"
                            startX: Theme.headingText * 0.7
                            startY: 0
                            PathLine { x: Theme.headingText * 1.4; y: Theme.headingText * 1.25 }
                            PathLine { x: 0; y: Theme.headingText * 1.25 }
                            PathLine { x: Theme.headingText * 0.7; y: 0 }
                        }
                    }
                    Text {
                        anchors.horizontalCenter: parent.horizontalCenter
                        anchors.bottom: parent.bottom
                        text: "!"
                        font.bold: true
                        font.pixelSize: Theme.headingText * 0.95
                        color: Theme.signalColor(panel.signalWord)
                        Accessible.ignored: true
                    }
                }
                Heading {
                    Layout.fillWidth: true
                    text: panel.signalText
                    wrapMode: Text.NoWrap
                    fontSizeMode: Text.HorizontalFit
                    minimumPixelSize: Theme.bodyText / 2
                    color: Theme.signalInk(panel.signalWord)
                    Accessible.ignored: true
                }
            }
        }
        BodyText {
            Layout.fillWidth: true
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            text: panel.hazard
            font.bold: true
            font.pixelSize: Math.round(Theme.bodyText * 1.12)
        }
        BodyText {
            Layout.fillWidth: true
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            text: panel.consequence
        }
        BodyText {
            Layout.fillWidth: true
            Layout.leftMargin: Theme.margin
            Layout.rightMargin: Theme.margin
            Layout.bottomMargin: Theme.gap
            text: panel.avoidance
        }
    }
}
