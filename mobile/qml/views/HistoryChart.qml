// SPDX-License-Identifier: GPL-3.0-or-later
// One value of a scale over the months, with its limits and the days on which the scale was taught; the same in words.
import QtCharts
import QtQuick
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: chart
    property string title: ""
    property string note: ""
    property string unit: ""
    property int decimals: 0
    /// {time, value, low, high}; low and high may be missing.
    property var points: []
    property var taught: []
    readonly property bool hasLimits: points.some(point => point.high !== undefined)
    visible: points.length > 0
    Layout.fillWidth: true
    spacing: 4

    function said(value: double): string {
        return App.number(value, decimals) + " " + unit;
    }
    function describe(): string {
        if (points.length === 0)
            return "";
        const values = points.map(point => point.value);
        const last = points[points.length - 1];
        const limits = hasLimits && last.high !== undefined ? " " + qsTr("It may lie between %1 and %2.").arg(said(last.low)).arg(said(last.high)) : "";
        return qsTr("%n reading(s) from %1 to %2, between %3 and %4, the last %5.", "", points.length).arg(App.date(points[0].time)).arg(App.date(last.time)).arg(said(Math.min(...values))).arg(said(Math.max(...values))).arg(said(last.value)) + limits;
    }
    function fill() {
        line.clear();
        dots.clear();
        upper.clear();
        lower.clear();
        lines.forEach(each => plot.removeSeries(each));
        lines = [];
        if (points.length === 0)
            return;
        const day = 24 * 3600 * 1000;
        const left = Math.min(points[0].time, ...taught) - day;
        const right = Math.max(points[points.length - 1].time, ...taught) + day;
        let low = points[0].value, high = low;
        for (const point of points) {
            line.append(point.time, point.value);
            dots.append(point.time, point.value);
            low = Math.min(low, point.value, point.low ?? low);
            high = Math.max(high, point.value, point.high ?? high);
            if (point.high !== undefined) {
                upper.append(point.time, point.high);
                lower.append(point.time, point.low);
            }
        }
        const room = Math.max((high - low) * 0.1, Math.pow(10, -decimals));
        const ticks = plot.width < 36 * plot.fontSize ? [left, right] : [left, (left + right) / 2, right];
        // Where a date has no room the words below say it; labels must differ, blank ones too.
        const hasRoom = plot.width >= 16 * plot.fontSize;
        plot.mark(plot.xAxis, ticks, value => hasRoom ? App.date(value) : value === left ? " " : "  ");
        plot.showY(low - room, high + room);
        lines = taught.map(time => {
            const each = plot.createSeries(ChartView.SeriesTypeLine, "", plot.xAxis, plot.yAxis);
            each.color = Theme.faintInk;
            each.width = plot.thin;
            each.style = Qt.DotLine;
            each.append(time, plot.yAxis.min);
            each.append(time, plot.yAxis.max);
            return each;
        });
    }
    property var lines: []
    onPointsChanged: fill()
    onTaughtChanged: fill()
    Component.onCompleted: fill()
    Heading {
        Layout.fillWidth: true
        text: chart.title
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        font.pixelSize: Theme.smallText
        text: chart.note
    }
    Plot {
        id: plot
        words: chart.title + ". " + chart.describe()
        lastLabel_em: 3
        onWidthChanged: Qt.callLater(chart.fill)
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
            id: line
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.accent
            width: plot.thick
        }
        ScatterSeries {
            id: dots
            axisX: plot.xAxis
            axisY: plot.yAxis
            color: Theme.accent
            borderColor: Theme.ink
            markerSize: 12
        }
    }
    ChartKey {
        entries: [
            {
                text: qsTr("Measured"),
                color: Theme.accent,
                mark: "round"
            }
        ].concat(chart.hasLimits ? [
            {
                text: qsTr("Tolerance"),
                color: Theme.bad,
                style: Qt.DashLine,
                width: plot.thin
            }
        ] : []).concat(chart.taught.length > 0 ? [
            {
                text: qsTr("Taught anew"),
                color: Theme.faintInk,
                style: Qt.DotLine,
                width: plot.thin
            }
        ] : [])
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: chart.describe()
    }
}
