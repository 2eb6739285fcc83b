// SPDX-License-Identifier: GPL-3.0-or-later
// A signature on the glass, kept as the lines that were drawn (SVG).
import QtQuick
import QtQuick.Layouts
import Hingepin

Rectangle {
    id: pad
    property var strokes: []
    readonly property bool isEmpty: strokes.length === 0
    implicitHeight: 180
    Layout.fillWidth: true
    color: "#ffffff"
    border.color: Theme.line
    border.width: Theme.lineWidth + 1
    radius: Theme.radius
    Accessible.role: Accessible.Canvas
    Accessible.name: qsTr("Sign here with a finger")
    function clear() {
        strokes = [];
        canvas.requestPaint();
    }
    function svg(): string {
        const paths = strokes.map(stroke => '<path d="M' + stroke.map(p => p[0] + " " + p[1]).join(" L") + '" fill="none" stroke="#000000" stroke-width="3"/>');
        return '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ' + Math.round(width) + " " + Math.round(height) + '">' + paths.join("") + "</svg>";
    }
    Canvas {
        id: canvas
        anchors.fill: parent
        onPaint: {
            const context = getContext("2d");
            context.reset();
            context.lineWidth = 3;
            context.strokeStyle = "#000000";
            for (const stroke of pad.strokes) {
                context.beginPath();
                stroke.forEach((p, i) => i === 0 ? context.moveTo(p[0], p[1]) : context.lineTo(p[0], p[1]));
                context.stroke();
            }
        }
    }
    MouseArea {
        anchors.fill: parent
        preventStealing: true
        onPressed: mouse => {
            pad.strokes = pad.strokes.concat([[[Math.round(mouse.x), Math.round(mouse.y)]]]);
        }
        onPositionChanged: mouse => {
            const strokes = pad.strokes;
            strokes[strokes.length - 1].push([Math.round(mouse.x), Math.round(mouse.y)]);
            pad.strokes = strokes;
            canvas.requestPaint();
        }
    }
}
