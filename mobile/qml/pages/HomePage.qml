// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    title: App.person
    canGoBack: false
}
