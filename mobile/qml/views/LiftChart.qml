// SPDX-License-Identifier: GPL-3.0-or-later
// Lift pressure over boom angle: the passes, the tare fitted to them with its band, and, where it is live, the pass that runs.
import QtCharts
import QtQuick
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: chart
    property bool live: false
    property var passLines: []
    readonly property bool hasTare: Charts.tare.low !== undefined
    readonly property bool inDegrees: !live || Live.angleKnown
    readonly property string unit: Charts.pressureUnit
    spacing: 4
    Layout.fillWidth: true

    // What is shown of the axes grows with the pass and never shrinks under it.
    property rect shown: Qt.rect(0, 0, 0, 0)

    function passStyle(pass: var): int {
        return pass.lowering ? Qt.DashDotLine : pass.pace === "slow" ? Qt.DashLine : Qt.DotLine;
    }
    function passColor(pass: var): color {
        return pass.lowering ? Theme.warn : pass.pace === "slow" ? Theme.ink : Theme.accent;
    }
    function describe(): string {
        const said = Charts.passes.filter(pass => pass.low !== undefined).map(pass => qsTr("%1: %2 to %3 %4, from %5° to %6°.").arg(plot.passName(pass)).arg(App.number(pass.low, 0)).arg(App.number(pass.high, 0)).arg(unit).arg(App.number(pass.left, 0)).arg(App.number(pass.right, 0)));
        if (hasTare)
            said.push(qsTr("Fitted tare: %1 to %2 %3, known to ± %4 %3 (95 %).").arg(App.number(Charts.tare.low, 0)).arg(App.number(Charts.tare.high, 0)).arg(unit).arg(App.number(Charts.tare.band, unit === "psi" ? 0 : 1)));
        return said.join(" ");
    }
    function include(left: double, right: double, low: double, high: double) {
        if (!(right > left))
            return;
        const empty = shown.width === 0;
        const l = empty ? left : Math.min(left, shown.left);
        const r = empty ? right : Math.max(right, shown.right);
        const b = empty ? low : Math.min(low, shown.top);
        const t = empty ? high : Math.max(high, shown.bottom);
        if (!empty && l === shown.left && r === shown.right && b === shown.top && t === shown.bottom)
            return;
        shown = Qt.rect(l, b, r - l, t - b);
        plot.showX(l, r);
        plot.showY(b, t);
    }
    function fill() {
        passLines.forEach(line => plot.removeSeries(line));
        passLines = [];
        shown = Qt.rect(0, 0, 0, 0);
        if (!inDegrees)
            return;
        passLines = Charts.passes.map((pass, index) => {
            const line = plot.createSeries(ChartView.SeriesTypeLine, "", plot.xAxis, plot.yAxis);
            line.color = passColor(pass);
            line.width = plot.thin;
            line.style = passStyle(pass);
            Charts.fillPass(line, index);
            include(pass.left, pass.right, pass.low, pass.high);
            return line;
        });
        Charts.fillTare(tare, low, high);
        Charts.hatch(band, Theme.faintInk);
        if (hasTare)
            include(Charts.tare.left, Charts.tare.right, Charts.tare.low - Charts.tare.band, Charts.tare.high + Charts.tare.band);
    }
    onInDegreesChanged: fill()
    Component.onCompleted: {
        if (live)
            Charts.readJob();
        else
            fill();
    }
    Connections {
        target: Charts
        function onChanged() {
            chart.fill();
        }
    }
    Connections {
        target: App
        function onSettingsChanged() {
            chart.fill();
        }
    }
    Connections {
        target: Live
        enabled: chart.live
        function onRowsCame() {
            const extent = Live.fill(running);
            chart.include(extent.left, extent.right, extent.top, extent.bottom);
        }
    }

    Heading {
        visible: !chart.live
        Layout.fillWidth: true
        text: qsTr("Lift pressure")
    }
    BodyText {
        Layout.fillWidth: true
        font.pixelSize: Theme.smallText
        text: chart.inDegrees ? qsTr("Pressure in %1, over the boom's angle").arg(chart.unit) : qsTr("Pressure in %1, over the boom sensor's reading").arg(chart.unit)
    }
    Plot {
        id: plot
        words: qsTr("Chart of the lift pressure.") + " " + chart.describe()
        xLabel: value => chart.inDegrees ? App.number(value, 0) + "°" : App.number(value, 1)
        AreaSeries {
            id: band
            visible: chart.hasTare && chart.inDegrees
            axisX: plot.xAxis
            axisY: plot.yAxis
            upperSeries: LineSeries {
                id: high
            }
            lowerSeries: LineSeries {
                id: low
            }
        }
        LineSeries {
            id: tare
            visible: band.visible
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.good
            width: plot.thick
        }
        LineSeries {
            id: running
            visible: chart.live
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.accent
            width: plot.thick + 1
            useOpenGL: false
        }
    }
    ChartKey {
        entries: (chart.live ? [
            {
                text: qsTr("This pass"),
                color: Theme.accent,
                width: plot.thick + 1
            }
        ] : []).concat(chart.inDegrees ? Charts.passes.map(pass => ({
                    text: plot.passName(pass),
                    color: chart.passColor(pass),
                    style: chart.passStyle(pass),
                    width: plot.thin
                })) : []).concat(band.visible ? [
            {
                text: qsTr("Fitted tare"),
                color: Theme.good,
                width: plot.thick
            },
            {
                text: qsTr("Where it lies with 95 % probability"),
                color: Theme.faintInk,
                hatch: true
            }
        ] : [])
    }
    BodyText {
        visible: !chart.live && text.length > 0
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: chart.describe()
    }
}
