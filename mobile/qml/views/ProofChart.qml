// SPDX-License-Identifier: GPL-3.0-or-later
// The errors of a proof against its tolerance, reading by reading.
import QtCharts
import QtQuick
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: chart
    readonly property var errors: Charts.proof.errors ?? []
    readonly property double limit: Charts.proof.limit ?? 0
    spacing: 4
    Layout.fillWidth: true

    function isWithin(error: double): bool {
        return !(limit > 0) || Math.abs(error) <= limit;
    }
    function describe(): string {
        if (errors.length === 0)
            return "";
        const said = errors.map((error, index) => qsTr("Reading %1: %2 %").arg(index + 1).arg(App.number(error, 2)) + (isWithin(error) ? "" : " (" + qsTr("outside") + ")"));
        return said.join("; ") + ". " + qsTr("Mean %1 %.").arg(App.number(Charts.proof.mean, 2)) + (limit > 0 ? " " + qsTr("The mean may be off by %1 %.").arg(App.number(limit, 2)) : "");
    }
    function fill() {
        inside.clear();
        outside.clear();
        lower.clear();
        upper.clear();
        middle.clear();
        let most = Math.max(limit * 1.3, 0.1);
        errors.forEach((error, index) => {
            (isWithin(error) ? inside : outside).append(index + 1, error);
            most = Math.max(most, Math.abs(error) * 1.2);
        });
        const last = errors.length + 0.5;
        for (const at of [0.5, last]) {
            if (limit > 0) {
                lower.append(at, -limit);
                upper.append(at, limit);
            }
            middle.append(at, Charts.proof.mean ?? 0);
        }
        plot.mark(plot.xAxis, [0.5].concat(errors.map((error, index) => index + 1)).concat([last]), value => Number.isInteger(value) ? App.number(value, 0) : value < 1 ? " " : "  ");
        plot.showY(-most, most);
    }
    onErrorsChanged: fill()
    Component.onCompleted: fill()

    Heading {
        Layout.fillWidth: true
        text: qsTr("Errors of the proof")
    }
    BodyText {
        Layout.fillWidth: true
        font.pixelSize: Theme.smallText
        text: qsTr("Error in % of the known mass, over the number of the reading")
    }
    Plot {
        id: plot
        words: qsTr("Chart of the errors of the proof.") + " " + chart.describe()
        LineSeries {
            id: upper
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.bad
            width: plot.thin
            style: Qt.DashLine
        }
        LineSeries {
            id: lower
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.bad
            width: plot.thin
            style: Qt.DashLine
        }
        LineSeries {
            id: middle
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.accent
            width: plot.thick
        }
        ScatterSeries {
            id: inside
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.good
            borderColor: Theme.ink
            markerSize: 14
        }
        ScatterSeries {
            id: outside
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.bad
            borderColor: Theme.ink
            markerShape: ScatterSeries.MarkerShapeRectangle
            markerSize: 14
        }
    }
    ChartKey {
        entries: [
            {
                text: qsTr("Within the tolerance"),
                color: Theme.good,
                mark: "round"
            },
            {
                text: qsTr("Outside"),
                color: Theme.bad,
                mark: "square"
            },
            {
                text: qsTr("Mean"),
                color: Theme.accent,
                width: plot.thick
            },
            {
                text: qsTr("Tolerance of the mean"),
                color: Theme.bad,
                style: Qt.DashLine,
                width: plot.thin
            }
        ]
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: chart.describe()
    }
}
