// SPDX-License-Identifier: GPL-3.0-or-later
// What the fit leaves of each pass: one is looked at before the others.
import QtCharts
import QtQuick
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: chart
    property int chosen: 0
    property var lines: []
    readonly property string unit: Charts.pressureUnit
    readonly property int decimals: unit === "psi" ? 0 : 2
    spacing: 4
    Layout.fillWidth: true

    function passName(pass: var): string {
        return plot.passName(pass) + " · " + (pass.load === "empty" ? qsTr("bucket empty") : pass.load === "test-mass" ? qsTr("with the test mass") : qsTr("with a load"));
    }
    function passWords(pass: var): string {
        return pass.low === undefined ? "" : qsTr("Standard deviation %1 %2, largest %3 %2").arg(App.number(pass.deviation, decimals)).arg(unit).arg(App.number(Math.max(-pass.low, pass.high), decimals));
    }
    function paint() {
        lines.forEach((line, index) => {
            line.color = index === chosen ? Theme.accent : Theme.line;
            line.width = index === chosen ? plot.thick : 1;
        });
    }
    function fill() {
        lines.forEach(line => plot.removeSeries(line));
        const all = Charts.residuals.filter(pass => pass.low !== undefined);
        const most = all.reduce((least, pass) => Math.max(least, -pass.low, pass.high), 0.01);
        lines = Charts.residuals.map((pass, index) => {
            const line = plot.createSeries(ChartView.SeriesTypeLine, "", plot.xAxis, plot.yAxis);
            Charts.fillResidual(line, index);
            return line;
        });
        // An axis that no line has yet keeps no room for its labels.
        if (all.length > 0) {
            plot.showX(Math.min(...all.map(pass => pass.left)), Math.max(...all.map(pass => pass.right)));
            plot.showY(-most, most);
        }
        paint();
    }
    onChosenChanged: paint()
    Component.onCompleted: fill()
    Connections {
        target: Charts
        function onChanged() {
            chart.chosen = 0;
            chart.fill();
        }
    }
    Connections {
        target: App
        function onSettingsChanged() {
            chart.paint();
        }
    }

    Heading {
        Layout.fillWidth: true
        text: qsTr("What the fit leaves")
    }
    BodyText {
        Layout.fillWidth: true
        font.pixelSize: Theme.smallText
        text: qsTr("Measured less fitted, in %1, over the boom's angle; the chosen pass is drawn thick").arg(chart.unit)
    }
    Plot {
        id: plot
        words: qsTr("Chart of what the fit leaves.") + " " + Charts.residuals.map(pass => chart.passName(pass) + ": " + chart.passWords(pass)).join(". ")
        xLabel: value => App.number(value, 0) + "°"
    }
    Choice {
        options: Charts.residuals.map((pass, index) => ({
                    value: index,
                    text: chart.passName(pass),
                    note: chart.passWords(pass)
                }))
        value: chart.chosen
        onChosen: value => chart.chosen = value
    }
}
