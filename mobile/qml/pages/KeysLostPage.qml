// SPDX-License-Identifier: GPL-3.0-or-later
// A restored phone: the yard is there, the keys to sign with are not.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    title: qsTr("The keys are not on this phone")
    canGoBack: false
    BodyText {
        Layout.fillWidth: true
        text: qsTr("Units, jobs and records of the yard are here, but no key to sign with. So it is after a phone was restored from a backup: backups hold no keys, so that nobody else can sign with yours.")
    }
    BodyText {
        Layout.fillWidth: true
        text: qsTr("Nothing is lost: what was signed stays signed, and can be checked. With new keys you go on. The yard's list of who may sign then begins anew, with all who were on it, and other phones of the yard must accept it.")
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.warn
        text: "⚠ " + qsTr("If the old phone was lost or stolen, its key can still sign. Have it revoked.")
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Make new keys")
            onPressedFully: page.open("MakeYardPage", {
                anew: true
            })
        },
        Press {
            Layout.fillWidth: true
            text: qsTr("Open another yard")
            onPressedFully: App.leaveYard()
        }
    ]
}
