// SPDX-License-Identifier: GPL-3.0-or-later
// Lift pressure over boom angle as the pass runs.
import QtCharts
import QtQuick
import QtQuick.Layouts
import Hingepin

ChartView {
    id: chart
    Layout.fillWidth: true
    implicitHeight: 220
    antialiasing: true
    legend.visible: false
    backgroundColor: Theme.surface
    backgroundRoundness: Theme.radius
    margins.top: 2
    margins.bottom: 2
    margins.left: 2
    margins.right: 2
    ValueAxis {
        id: angle
        min: -45
        max: 50
        tickCount: 6
        labelFormat: "%.0f°"
        labelsColor: Theme.ink
        gridLineColor: Theme.line
    }
    ValueAxis {
        id: pressure
        min: 0
        max: 100
        labelFormat: "%.0f"
        labelsColor: Theme.ink
        gridLineColor: Theme.line
        titleText: App.usUnits ? "psi" : "bar"
    }
    LineSeries {
        id: line
        axisX: angle
        axisY: pressure
        color: Theme.accent
        width: 3
        useOpenGL: false
    }
    Connections {
        target: Live
        function onRowsCame() {
            Live.fill(line);
            if (line.count < 2)
                return;
            let low = 1e9, high = -1e9, left = 1e9, right = -1e9;
            for (let i = 0; i < line.count; i += 8) {
                const p = line.at(i);
                low = Math.min(low, p.y);
                high = Math.max(high, p.y);
                left = Math.min(left, p.x);
                right = Math.max(right, p.x);
            }
            pressure.min = Math.max(0, Math.floor(low / 20) * 20);
            pressure.max = Math.ceil((high + 1) / 20) * 20;
            if (!Live.angleKnown) {
                angle.min = left;
                angle.max = Math.max(right, left + 0.1);
            }
        }
    }
}
