// SPDX-License-Identifier: GPL-3.0-or-later
// The loader from its side, drawn from its pins: where it is, where the step wants the boom, the weigh window as an arc; or what
// is to be measured of it.
import QtQuick
import QtQuick.Layouts
import Hingepin

Item {
    id: view
    /// What is measured, as a job's view has it; then the machine stands as there.
    property var measure: ({})
    readonly property bool measures: measure.from !== undefined
    readonly property var machine: measures ? measure.machine : Live.machine
    readonly property bool hasMachine: machine.hingePin !== undefined
    implicitHeight: measures ? 190 : Math.min(width * 0.62, 300)
    Layout.fillWidth: true
    // A position that nobody knows is not drawn.
    visible: hasMachine && (measures || Live.angleKnown || Live.source === "practice")
    Accessible.role: Accessible.Graphic
    Accessible.name: measures ? qsTr("Side view of the loader. Measure from A to B: %1").arg(Job.view.text) : (Live.angleKnown ? qsTr("Side view of the loader, boom at %1 degrees").arg(Math.round(Live.boomAngle)) : qsTr("Side view of the loader")) + (Live.angleWanted ? ", " + qsTr("%1 degrees wanted").arg(Math.round(Live.wantedAngle)) : "")

    // Metres to pixels: the machine is shown from 2.7 m behind the boom pivot to 4.5 m before it, up to 5.6 m; of what is
    // measured only so much that it can be seen which pins are meant.
    readonly property double span: measures ? Math.min(7.2, Math.max(2.6, 2.4 * Math.hypot(measure.to[0] - measure.from[0], measure.to[1] - measure.from[1]))) : 7.2
    readonly property double scaleFactor: Math.min(width / span, height / (5.6 * span / 7.2))
    readonly property double leftEdge: measures ? Math.min(4.5 - span, Math.max(-2.7, (measure.from[0] + measure.to[0] - width / scaleFactor) / 2)) : -2.7
    readonly property double lowEdge: measures ? Math.max(-0.2, (measure.from[1] + measure.to[1] - height / scaleFactor) / 2) : -6 / scaleFactor
    function px(p: var): double {
        return (p[0] - leftEdge) * scaleFactor;
    }
    function py(p: var): double {
        return height - (p[1] - lowEdge) * scaleFactor;
    }
    onMeasureChanged: canvas.requestPaint()
    onMachineChanged: canvas.requestPaint()
    Connections {
        target: App
        function onSettingsChanged() {
            canvas.requestPaint();
        }
    }
    Canvas {
        id: canvas
        anchors.fill: parent
        onWidthChanged: requestPaint()
        onHeightChanged: requestPaint()
        function path(c: var, points: var) {
            c.beginPath();
            points.forEach((p, i) => i === 0 ? c.moveTo(view.px(p), view.py(p)) : c.lineTo(view.px(p), view.py(p)));
        }
        onPaint: {
            const c = getContext("2d");
            c.reset();
            if (!view.hasMachine)
                return;
            const m = view.machine;
            const thick = Math.max(3, view.scaleFactor * 0.09);
            c.lineJoin = "round";
            c.lineCap = "round";
            // Ground, tyre and body: a shape of no particular make.
            c.strokeStyle = Theme.ink;
            c.lineWidth = 2;
            path(c, [[-2.7, 0], [4.5, 0]]);
            c.stroke();
            c.fillStyle = Theme.faintInk;
            c.beginPath();
            c.arc(view.px([-0.55, 0.75]), view.py([-0.55, 0.75]), 0.75 * view.scaleFactor, 0, 2 * Math.PI);
            c.fill();
            c.fillStyle = Theme.surface;
            c.beginPath();
            c.arc(view.px([-0.55, 0.75]), view.py([-0.55, 0.75]), 0.34 * view.scaleFactor, 0, 2 * Math.PI);
            c.fill();
            c.fillStyle = Theme.line;
            path(c, [[-2.6, 0.7], [-0.9, 0.8], [0.25, 1.2], [0.2, 2.2], [-0.7, 2.1], [-0.8, 3.3], [-2.0, 3.3], [-2.1, 2.0], [-2.6, 1.9]]);
            c.closePath();
            c.fill();
            // The weigh window.
            if (!view.measures) {
                c.strokeStyle = Theme.good;
                c.lineWidth = thick * 1.6;
                c.globalAlpha = 0.55;
                path(c, m.windowArc);
                c.stroke();
                c.globalAlpha = 1;
            }
            // Where the boom is wanted.
            if (Live.angleWanted && !view.measures) {
                const length = Math.hypot(m.hingePin[0] - m.boomPivot[0], m.hingePin[1] - m.boomPivot[1]);
                const angle = Live.wantedAngle * Math.PI / 180;
                c.strokeStyle = Theme.accent;
                c.lineWidth = 3;
                c.setLineDash([8, 6]);
                path(c, [m.boomPivot, [m.boomPivot[0] + length * Math.cos(angle), m.boomPivot[1] + length * Math.sin(angle)]]);
                c.stroke();
                c.setLineDash([]);
            }
            // Cylinders, boom, bellcrank, link, bucket.
            c.strokeStyle = Theme.faintInk;
            c.lineWidth = thick * 0.8;
            path(c, [m.liftFramePin, m.liftBoomPin]);
            c.stroke();
            path(c, [m.tiltFramePin, m.bellcrankTiltPin]);
            c.stroke();
            c.strokeStyle = Theme.ink;
            c.lineWidth = thick * 1.8;
            path(c, [m.boomPivot, m.liftBoomPin, m.hingePin]);
            c.stroke();
            c.lineWidth = thick;
            path(c, [m.bellcrankTiltPin, m.bellcrankPivot, m.bellcrankLinkPin]);
            c.stroke();
            path(c, [m.bellcrankLinkPin, m.bucketLinkPin]);
            c.stroke();
            c.fillStyle = Theme.surface;
            path(c, m.bucket);
            c.closePath();
            c.fill();
            c.lineWidth = thick * 0.7;
            c.stroke();
            c.fillStyle = Theme.accent;
            for (const pin of [m.boomPivot, m.hingePin, m.liftFramePin, m.liftBoomPin, m.tiltFramePin, m.bellcrankPivot, m.bellcrankTiltPin, m.bellcrankLinkPin, m.bucketLinkPin]) {
                c.beginPath();
                c.arc(view.px(pin), view.py(pin), Math.max(2.5, thick * 0.45), 0, 2 * Math.PI);
                c.fill();
            }
            if (view.measures)
                dimension(c);
        }
        /// Over all else: helping lines dashed, what is measured between two marks with their letters.
        function dimension(c: var) {
            c.strokeStyle = Theme.bad;
            c.lineWidth = 2;
            c.setLineDash([7, 5]);
            view.measure.helpers.forEach(line => {
                path(c, line);
                c.stroke();
            });
            c.setLineDash([]);
            c.lineWidth = 4;
            path(c, [view.measure.from, view.measure.to]);
            c.stroke();
            const ends = [view.measure.from, view.measure.to];
            const x = view.px(ends[1]) - view.px(ends[0]);
            const y = view.py(ends[1]) - view.py(ends[0]);
            const reach = Math.max(1, Math.hypot(x, y));
            const size = Math.min(Theme.bodyText, 26);
            c.font = "bold " + size + "px sans-serif";
            c.textAlign = "center";
            c.textBaseline = "middle";
            ends.forEach((end, i) => {
                const px = view.px(end);
                const py = view.py(end);
                c.beginPath();
                c.moveTo(px - 9 * y / reach, py + 9 * x / reach);
                c.lineTo(px + 9 * y / reach, py - 9 * x / reach);
                c.stroke();
                // Beyond the end, and within the picture.
                const away = (i === 0 ? -1 : 1) * size;
                const cx = Math.min(view.width - size, Math.max(size, px + away * x / reach));
                const cy = Math.min(view.height - size, Math.max(size, py + away * y / reach));
                c.fillStyle = Theme.ground;
                c.beginPath();
                c.arc(cx, cy, size * 0.7, 0, 2 * Math.PI);
                c.fill();
                c.fillStyle = Theme.ink;
                c.fillText(i === 0 ? "A" : "B", cx, cy);
            });
        }
    }
    BodyText {
        visible: !view.measures && view.hasMachine && view.machine.known === false
        anchors.top: parent.top
        anchors.right: parent.right
        font.pixelSize: Math.min(Theme.smallText, 16)
        color: Theme.faintInk
        text: qsTr("plausible, not its own pins")
    }
}
