// SPDX-License-Identifier: GPL-3.0-or-later
// What the lines of a chart are: each drawn as it is there, with its name. `entries`: list of {text, color, style, width,
// hatch, mark}.
import QtQuick
import QtQuick.Layouts
import Hingepin

Flow {
    id: keys
    property var entries: []
    Layout.fillWidth: true
    spacing: Theme.gap
    Repeater {
        // Each look once, however many lines have it.
        model: keys.entries.filter((entry, index) => keys.entries.findIndex(other => other.text === entry.text) === index)
        Row {
            id: entry
            required property var modelData
            spacing: 6
            Canvas {
                id: sample
                width: 36
                height: Theme.smallText
                anchors.verticalCenter: parent.verticalCenter
                Accessible.ignored: true
                readonly property color ink: entry.modelData.color
                onInkChanged: requestPaint()
                onPaint: {
                    const c = getContext("2d");
                    c.reset();
                    const look = entry.modelData;
                    const middle = height / 2;
                    c.strokeStyle = ink;
                    c.fillStyle = ink;
                    c.lineWidth = look.hatch ? 1 : look.width ?? 2;
                    c.beginPath();
                    if (look.hatch) {
                        for (let x = -height; x < width; x += 6) {
                            c.moveTo(x, height);
                            c.lineTo(x + height, 0);
                        }
                        c.stroke();
                        c.strokeRect(0, 0, width, height);
                        return;
                    }
                    if (look.mark === "round" || look.mark === "square") {
                        if (look.mark === "round")
                            c.arc(width / 2, middle, 5, 0, 2 * Math.PI);
                        else
                            c.rect(width / 2 - 5, middle - 5, 10, 10);
                        c.fill();
                        return;
                    }

                    c.setLineDash(look.style === Qt.DashLine ? [4, 2] : look.style === Qt.DotLine ? [1, 2] : look.style === Qt.DashDotLine ? [4, 2, 1, 2] : []);
                    c.moveTo(0, middle);
                    c.lineTo(width, middle);
                    c.stroke();
                }
            }
            TextMetrics {
                id: metrics
                font: name.font
                text: entry.modelData.text
            }
            BodyText {
                id: name
                width: Math.min(Math.ceil(metrics.advanceWidth) + 2, keys.width - 44)
                text: entry.modelData.text
                font.pixelSize: Theme.smallText
            }
        }
    }
}
