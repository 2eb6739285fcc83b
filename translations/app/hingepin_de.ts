<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name>AdmitPage</name>
    <message>
        <source>Add somebody</source>
        <translation>Jemanden aufnehmen</translation>
    </message>
    <message>
        <source>On their own phone they press &quot;Join a yard&quot; at the first start. Hold this phone over the code that it then shows.</source>
        <translation>Auf dem eigenen Telefon drückt die Person beim ersten Start „Einem Betriebshof beitreten“. Halten Sie dieses Telefon über den Code, den es dann zeigt.</translation>
    </message>
    <message>
        <source>A key on the list counts as that person&apos;s signature.</source>
        <translation>Ein Schlüssel auf der Liste gilt als Unterschrift dieser Person.</translation>
    </message>
    <message>
        <source>Whoever holds it confirms in their name that a machine is safe. If it is somebody else, people can be hurt.</source>
        <translation>Wer ihn hat, bestätigt in ihrem Namen, dass eine Maschine sicher ist. Ist es jemand anders, können Menschen verletzt werden.</translation>
    </message>
    <message>
        <source>Let in only who stands before you. Compare name and key on both screens.</source>
        <translation>Nehmen Sie nur auf, wer vor Ihnen steht. Vergleichen Sie Name und Schlüssel auf beiden Bildschirmen.</translation>
    </message>
    <message>
        <source>%1 is on the list. Let their phone read this code.</source>
        <translation>%1 steht auf der Liste. Lassen Sie das andere Telefon diesen Code lesen.</translation>
    </message>
    <message>
        <source>Code that lets the other phone in</source>
        <translation>Code, der das andere Telefon aufnimmt</translation>
    </message>
    <message>
        <source>The yard&apos;s lists do not fit in the code. Their phone can sign once it has them: with the next exchange, or as a file.</source>
        <translation>Die Listen des Betriebshofs passen nicht in den Code. Das andere Telefon kann unter­schreiben, sobald es sie hat: mit dem nächsten Austausch oder als Datei.</translation>
    </message>
    <message>
        <source>Their key begins with %1</source>
        <translation>Der Schlüssel beginnt mit %1</translation>
    </message>
    <message>
        <source>Asked at %1 by the clock of that phone</source>
        <translation>Gefragt um %1 nach der Uhr jenes Telefons</translation>
    </message>
    <message>
        <source>They sign as</source>
        <translation>Unter­schreibt als</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>Passphrase des Betriebshofs</translation>
    </message>
    <message>
        <source>Let them in</source>
        <translation>Aufnehmen</translation>
    </message>
    <message>
        <source>No, it is somebody else</source>
        <translation>Nein, es ist jemand anders</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>Das andere Telefon hat ihn gelesen</translation>
    </message>
</context>
<context>
    <name>AnswerPage</name>
    <message>
        <source>Confirm for another phone</source>
        <translation>Für ein anderes Telefon bestätigen</translation>
    </message>
    <message>
        <source>On the other phone somebody presses &quot;Ask another phone&quot; at the step that you are to confirm. Hold this phone over its code.</source>
        <translation>Auf dem anderen Telefon drückt jemand bei dem Schritt, den Sie bestätigen sollen, „Anderes Telefon fragen“. Halten Sie dieses Telefon über den Code.</translation>
    </message>
    <message>
        <source>Others go to work by what you confirm.</source>
        <translation>Andere gehen nach Ihrer Bestätigung an die Arbeit.</translation>
    </message>
    <message>
        <source>If it is not so, the machine can start or the boom can come down on them.</source>
        <translation>Ist es nicht so, kann die Maschine anlaufen oder das Hubgerüst auf sie herunterkommen.</translation>
    </message>
    <message>
        <source>Go to the machine and look for yourself. Confirm only what you have seen. Local rules and the maker&apos;s manual come first.</source>
        <translation>Gehen Sie zur Maschine und sehen Sie selbst nach. Bestätigen Sie nur, was Sie gesehen haben. Örtliche Vorschriften und die Anleitung des Herstellers gehen vor.</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 mit %2</translation>
    </message>
    <message>
        <source>%1 asks, at %2 by the clock of that phone</source>
        <translation>%1 fragt, um %2 nach der Uhr jenes Telefons</translation>
    </message>
    <message>
        <source>Said there just before:</source>
        <translation>Kurz davor dort gesagt:</translation>
    </message>
    <message>
        <source>You can&apos;t answer this. It is for: %1</source>
        <translation>Das können Sie nicht beantworten. Gefragt ist: %1</translation>
    </message>
    <message>
        <source>Your answer: yes. Let the other phone read this code.</source>
        <translation>Ihre Antwort: ja. Lassen Sie das andere Telefon diesen Code lesen.</translation>
    </message>
    <message>
        <source>Your answer: no. Let the other phone read this code.</source>
        <translation>Ihre Antwort: nein. Lassen Sie das andere Telefon diesen Code lesen.</translation>
    </message>
    <message>
        <source>Code of your answer</source>
        <translation>Code Ihrer Antwort</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Ich bestätige es</translation>
    </message>
    <message>
        <source>Sealed with your key: %1</source>
        <translation>Versiegelt mit Ihrem Schlüssel: %1</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>Nein, so ist es nicht</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>Das andere Telefon hat ihn gelesen</translation>
    </message>
</context>
<context>
    <name>AskPage</name>
    <message>
        <source>Ask another phone</source>
        <translation>Anderes Telefon fragen</translation>
    </message>
    <message>
        <source>1. The second person opens &quot;Confirm for another phone&quot; on the first page of their own phone and reads this code. It holds for 15 minutes.</source>
        <translation>1. Die zweite Person öffnet auf der ersten Seite ihres eigenen Telefons „Für ein anderes Telefon bestätigen“ und liest diesen Code. Er gilt 15 Minuten.</translation>
    </message>
    <message>
        <source>Code that asks for the confirmation</source>
        <translation>Code, der nach der Bestätigung fragt</translation>
    </message>
    <message>
        <source>2. They look for themself and answer. Then read the code that their phone shows.</source>
        <translation>2. Sie sieht selbst nach und antwortet. Dann lesen Sie den Code, den ihr Telefon zeigt.</translation>
    </message>
    <message>
        <source>Hold this phone over the other one, so that the whole code of the answer is in the picture.</source>
        <translation>Halten Sie dieses Telefon über das andere, sodass der ganze Code der Antwort im Bild ist.</translation>
    </message>
    <message>
        <source>Read their answer</source>
        <translation>Antwort lesen</translation>
    </message>
    <message>
        <source>Ask again with a new code</source>
        <translation>Mit neuem Code noch einmal fragen</translation>
    </message>
</context>
<context>
    <name>AttachmentEditPage</name>
    <message>
        <source>Number or name of the attachment</source>
        <translation>Nummer oder Name des Anbaugeräts</translation>
    </message>
    <message>
        <source>Quick coupler, kg</source>
        <translation>Schnellwechsler, kg</translation>
    </message>
    <message>
        <source>Bucket, kg</source>
        <translation>Schaufel, kg</translation>
    </message>
    <message>
        <source>Load&apos;s centre along the bucket floor from the hinge pin, mm</source>
        <translation>Lastschwerpunkt entlang des Schaufelbodens, vom Schaufel­drehpunkt aus, mm</translation>
    </message>
    <message>
        <source>Load&apos;s centre square to the floor, mm</source>
        <translation>Lastschwerpunkt senkrecht zum Schaufelboden, mm</translation>
    </message>
    <message>
        <source>Heel along the floor, mm</source>
        <translation>Schaufelferse entlang des Schaufelbodens, mm</translation>
    </message>
    <message>
        <source>Heel square to the floor, mm</source>
        <translation>Schaufelferse senkrecht zum Schaufelboden, mm</translation>
    </message>
    <message>
        <source>Cutting edge along the floor, mm</source>
        <translation>Schneidkante entlang des Schaufelbodens, mm</translation>
    </message>
    <message>
        <source>Cutting edge square to the floor, mm</source>
        <translation>Schneidkante senkrecht zum Schaufelboden, mm</translation>
    </message>
    <message>
        <source>Upper stop: cutting edge above ground, mm</source>
        <translation>Oberer Haltepunkt: Schneidkante über dem Erdboden, mm</translation>
    </message>
    <message>
        <source>Lower stop: cutting edge above ground, mm</source>
        <translation>Unterer Haltepunkt: Schneidkante über dem Erdboden, mm</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>%1 bearbeiten</translation>
    </message>
    <message>
        <source>New attachment</source>
        <translation>Neues Anbaugerät</translation>
    </message>
    <message>
        <source>What is not known stays empty. Without masses and a load centre a known mass is needed to calibrate.</source>
        <translation>Was nicht bekannt ist, bleibt leer. Ohne Massen und Lastschwerpunkt ist zum Kalibrieren eine bekannte Masse nötig.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
</context>
<context>
    <name>AttachmentsPage</name>
    <message>
        <source>Attachments</source>
        <translation>Anbaugeräte</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Noch keine.</translation>
    </message>
    <message>
        <source>Add an attachment</source>
        <translation>Anbaugerät hinzufügen</translation>
    </message>
</context>
<context>
    <name>BeginPage</name>
    <message>
        <source>Begin a job on %1</source>
        <translation>Auftrag an %1 beginnen</translation>
    </message>
    <message>
        <source>Must have been done before: %1</source>
        <translation>Muss vorher erledigt sein: %1</translation>
    </message>
    <message>
        <source>Have at hand: %1</source>
        <translation>Bereithalten: %1</translation>
    </message>
    <message>
        <source>Way</source>
        <translation>Variante</translation>
    </message>
    <message>
        <source>Fitted attachment</source>
        <translation>Angebautes Anbaugerät</translation>
    </message>
    <message>
        <source>If nobody is here to confirm what a second person should</source>
        <translation>Wenn niemand da ist, der bestätigt, was eine zweite Person bestätigen soll</translation>
    </message>
    <message>
        <source>Wait for somebody</source>
        <translation>Auf jemanden warten</translation>
    </message>
    <message>
        <source>A look from afar, by photo</source>
        <translation>Ein Blick aus der Ferne, auf ein Foto</translation>
    </message>
    <message>
        <source>Go on, marked as unconfirmed</source>
        <translation>Weitermachen, mit Vermerk: nicht bestätigt</translation>
    </message>
    <message>
        <source>(empty where the attachment says it)</source>
        <translation>(leer, wo das Anbaugerät es angibt)</translation>
    </message>
    <message>
        <source>Rated payload</source>
        <translation>Nennnutzlast</translation>
    </message>
    <message>
        <source>Wanted upper stop, cutting edge above ground</source>
        <translation>Gewünschter oberer Haltepunkt, Schneidkante über dem Erdboden</translation>
    </message>
    <message>
        <source>Test mass</source>
        <translation>Prüfmasse</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Another procedure</source>
        <translation>Andere Anweisung</translation>
    </message>
    <message>
        <source>What is to be done?</source>
        <translation>Was ist zu tun?</translation>
    </message>
</context>
<context>
    <name>BrokenPage</name>
    <message>
        <source>The yard can&apos;t be opened</source>
        <translation>Der Betriebshof kann nicht geöffnet werden</translation>
    </message>
    <message>
        <source>Nothing was changed. Keep the folder as it is, and restore a backup beside it if you have one.</source>
        <translation>Nichts wurde geändert. Den Ordner lassen, wie er ist, und eine Sicherungskopie, wenn es eine gibt, daneben wieder­herstellen.</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Erneut versuchen</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Anderen Betriebshof öffnen</translation>
    </message>
</context>
<context>
    <name>CameraView</name>
    <message>
        <source>Release the shutter</source>
        <translation>Auslösen</translation>
    </message>
</context>
<context>
    <name>CautionStep</name>
    <message>
        <source>I have read this</source>
        <translation>Ich habe das gelesen</translation>
    </message>
</context>
<context>
    <name>CertificatePage</name>
    <message>
        <source>Calibration certificate</source>
        <translation>Kalibrierschein</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>What you state here is not part of the sealed record, and the certificate says so. It may stay empty.</source>
        <translation>Was Sie hier angeben, ist nicht Teil der versiegelten Aufzeichnung, und der Schein sagt das. Es darf leer bleiben.</translation>
    </message>
    <message>
        <source>Calibrated by: name and address</source>
        <translation>Kalibriert von: Name und Anschrift</translation>
    </message>
    <message>
        <source>For whom: name and address</source>
        <translation>Für wen: Name und Anschrift</translation>
    </message>
    <message>
        <source>Where it was done</source>
        <translation>Wo es gemacht wurde</translation>
    </message>
    <message>
        <source>Country: two capital letters</source>
        <translation>Land: zwei Großbuchstaben</translation>
    </message>
    <message>
        <source>Two capital letters (ISO 3166-1), as in DE</source>
        <translation>Zwei Großbuchstaben (ISO 3166-1), wie DE</translation>
    </message>
    <message>
        <source>Certificates of the test masses or of the truck scale</source>
        <translation>Scheine der Prüfmassen oder der Fahrzeugwaage</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>Als PDF speichern</translation>
    </message>
    <message>
        <source>Save as a web page</source>
        <translation>Als Webseite speichern</translation>
    </message>
    <message>
        <source>One HTML file that needs nothing beside it</source>
        <translation>Eine HTML-Datei, die sonst nichts braucht</translation>
    </message>
    <message>
        <source>Save for programs</source>
        <translation>Für Programme speichern</translation>
    </message>
    <message>
        <source>A Digital Calibration Certificate (DCC, XML)</source>
        <translation>Ein digitaler Kalibrierschein (DCC, XML)</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
</context>
<context>
    <name>ChartsPage</name>
    <message>
        <source>Charts</source>
        <translation>Diagramme</translation>
    </message>
    <message>
        <source>Nothing was logged or proved that a chart could show.</source>
        <translation>Es wurde nichts aufgezeichnet oder geprüft, was ein Diagramm zeigen könnte.</translation>
    </message>
</context>
<context>
    <name>ComparePage</name>
    <message>
        <source>Check-out and return compared</source>
        <translation>Ausgabe und Rücknahme im Vergleich</translation>
    </message>
    <message>
        <source>Nothing differs that was read or answered.</source>
        <translation>Nichts, was abgelesen oder beantwortet wurde, weicht ab.</translation>
    </message>
    <message>
        <source>The record of the check-out</source>
        <translation>Das Protokoll der Ausgabe</translation>
    </message>
    <message>
        <source>The record of the return</source>
        <translation>Das Protokoll der Rücknahme</translation>
    </message>
</context>
<context>
    <name>ConfirmStep</name>
    <message>
        <source>Yes</source>
        <translation>Ja</translation>
    </message>
    <message>
        <source>No</source>
        <translation>Nein</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Ich bestätige es</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>Nein, so ist es nicht</translation>
    </message>
    <message>
        <source>Nobody is here to confirm</source>
        <translation>Niemand da zum Bestätigen</translation>
    </message>
    <message>
        <source>The record will say so</source>
        <translation>Das steht dann im Protokoll</translation>
    </message>
    <message>
        <source>A second person looks for themself and confirms: %1</source>
        <translation>Eine zweite Person sieht selbst hin und bestätigt: %1</translation>
    </message>
    <message>
        <source>Their passphrase</source>
        <translation>Passphrase dieser Person</translation>
    </message>
    <message>
        <source>Ask another phone</source>
        <translation>Anderes Telefon fragen</translation>
    </message>
    <message>
        <source>By a code, from screen to camera; no network is needed</source>
        <translation>Mit einem Code, vom Bildschirm zur Kamera; ohne Netz</translation>
    </message>
    <message>
        <source>No such person has a key on this phone. Ask another phone, or add one under People.</source>
        <translation>Keine solche Person hat einen Schlüssel auf diesem Telefon. Fragen Sie ein anderes Telefon, oder fügen Sie unter „Personen“ jemanden hinzu.</translation>
    </message>
</context>
<context>
    <name>DisputePage</name>
    <message>
        <source>What was this scale worth?</source>
        <translation>Was war diese Waage wert?</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 mit %2</translation>
    </message>
    <message>
        <source>Day of the load, as 2026-05-04</source>
        <translation>Tag der Ladung, wie 2026-05-04</translation>
    </message>
    <message>
        <source>Year, month and day, as 2026-05-04</source>
        <translation>Jahr, Monat und Tag, wie 2026-05-04</translation>
    </message>
    <message>
        <source>Tell</source>
        <translation>Sagen</translation>
    </message>
    <message>
        <source>Save it with the records behind it</source>
        <translation>Mit den Protokollen dahinter sichern</translation>
    </message>
    <message>
        <source>A folder that any program for these records can verify</source>
        <translation>Ein Ordner, den jedes Programm für diese Protokolle prüfen kann</translation>
    </message>
</context>
<context>
    <name>DoubtStep</name>
    <message>
        <source>I meant %1</source>
        <translation>Gemeint war %1</translation>
    </message>
    <message>
        <source>Type it again</source>
        <translation>Neu eintippen</translation>
    </message>
    <message>
        <source>It is %1</source>
        <translation>Es ist %1</translation>
    </message>
    <message>
        <source>The record will say that it was doubted and confirmed</source>
        <translation>Im Protokoll steht dann, dass der Wert bezweifelt und bestätigt wurde</translation>
    </message>
    <message>
        <source>%1: can that be?</source>
        <translation>%1: kann das sein?</translation>
    </message>
    <message>
        <source>Usual is between %1 and %2. Look for a slipped decimal mark or another unit.</source>
        <translation>Üblich ist ein Wert zwischen %1 und %2. Auf ein verrutschtes Dezimalzeichen oder eine andere Einheit achten.</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>%1 %2 eintragen</translation>
    </message>
</context>
<context>
    <name>EndStep</name>
    <message>
        <source>Seal the record</source>
        <translation>Protokoll versiegeln</translation>
    </message>
    <message>
        <source>Show the record</source>
        <translation>Protokoll zeigen</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Failed: do not use this scale</source>
        <translation>Fehl­geschlagen: diese Waage nicht benutzen</translation>
    </message>
    <message>
        <source>Given up: do not use this scale</source>
        <translation>Abgebrochen: diese Waage nicht benutzen</translation>
    </message>
    <message>
        <source>Sealed with your key. Nobody can change it without it showing.</source>
        <translation>Mit dem eigenen Schlüssel versiegelt. Niemand kann es ändern, ohne dass es auffällt.</translation>
    </message>
    <message>
        <source>Record %1</source>
        <translation>Protokoll %1</translation>
    </message>
</context>
<context>
    <name>EventPage</name>
    <message>
        <source>What happened to %1?</source>
        <translation>Was ist mit %1 geschehen?</translation>
    </message>
    <message>
        <source>It is sealed with your key as a record of its own. From then on the scale is due, until it is proved again.</source>
        <translation>Es wird mit Ihrem Schlüssel als eigenes Protokoll versiegelt. Von da an ist die Waage fällig, bis sie erneut geprüft ist.</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Was geschehen ist</translation>
    </message>
    <message>
        <source>With which attachment</source>
        <translation>Mit welchem Anbaugerät</translation>
    </message>
    <message>
        <source>With any of them</source>
        <translation>Mit jedem</translation>
    </message>
    <message>
        <source>In your words (may stay empty)</source>
        <translation>In eigenen Worten (darf leer bleiben)</translation>
    </message>
    <message>
        <source>Seal it</source>
        <translation>Versiegeln</translation>
    </message>
</context>
<context>
    <name>EvidenceStep</name>
    <message>
        <source>Take a photo</source>
        <translation>Foto aufnehmen</translation>
    </message>
    <message>
        <source>Use a practice picture</source>
        <translation>Übungsbild verwenden</translation>
    </message>
    <message>
        <source>Invented, and marked so</source>
        <translation>Erfunden und so gekennzeichnet</translation>
    </message>
    <message>
        <source>Choose a picture</source>
        <translation>Bild auswählen</translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation>Datei auswählen</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>Auslassen</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Bilder (%1)</translation>
    </message>
    <message>
        <source>All files (%1)</source>
        <translation>Alle Dateien (%1)</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>Das Telefon lässt die App die Kamera nicht benutzen. In den Einstellungen des Telefons erlauben oder ein Bild wählen.</translation>
    </message>
</context>
<context>
    <name>FeedPage</name>
    <message>
        <source>Live readings</source>
        <translation>Laufende Messwerte</translation>
    </message>
    <message>
        <source>Readings come as lines of a lift log (CSV): from a sensor gateway over the network, from a file that is played back, or from the simulated loader for practice.</source>
        <translation>Messwerte kommen als Zeilen einer Hubaufzeichnung (CSV): von einem Sensor-Gateway über das Netz, aus einer Datei, die abgespielt wird, oder zur Übung vom simulierten Radlader.</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Keine</translation>
    </message>
    <message>
        <source>Simulated loader</source>
        <translation>Simulierter Radlader</translation>
    </message>
    <message>
        <source>Invented; for practice units</source>
        <translation>Erfunden; für Übungsgeräte</translation>
    </message>
    <message>
        <source>A file, played back</source>
        <translation>Eine Datei, abgespielt</translation>
    </message>
    <message>
        <source>Sensor gateway (TCP)</source>
        <translation>Sensor-Gateway (TCP)</translation>
    </message>
    <message>
        <source>Address of the gateway, host:port</source>
        <translation>Adresse des Gateways, Host:Port</translation>
    </message>
    <message>
        <source>%1 readings a second</source>
        <translation>%1 Messwerte je Sekunde</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Hub­aufzeichnungen (%1)</translation>
    </message>
    <message>
        <source>Practise what goes wrong</source>
        <translation>Üben, was schiefgeht</translation>
    </message>
    <message>
        <source>The simulated loader can misbehave, from its next movement on, as if it were so on the machine. What the job then says and asks for is part of the practice.</source>
        <translation>Der simulierte Radlader kann sich ab der nächsten Bewegung falsch verhalten, als wäre es an der Maschine so. Was der Auftrag dann sagt und verlangt, gehört zur Übung.</translation>
    </message>
    <message>
        <source>The loader misbehaves</source>
        <translation>Der Radlader verhält sich falsch</translation>
    </message>
    <message>
        <source>No, all is well</source>
        <translation>Nein, alles in Ordnung</translation>
    </message>
    <message>
        <source>All is well</source>
        <translation>Alles in Ordnung</translation>
    </message>
    <message>
        <source>Cut the readings off for 10 seconds</source>
        <translation>Messwerte 10 Sekunden lang unterbrechen</translation>
    </message>
    <message>
        <source>As when a plug comes off; they come back by themselves</source>
        <translation>Wie wenn sich ein Stecker löst; sie kommen von selbst wieder</translation>
    </message>
</context>
<context>
    <name>FirstStartPage</name>
    <message>
        <source>Calibrates the scale and the automatic stops of a wheel loader, step by step, with no signal needed, and keeps a signed record.</source>
        <translation>Kalibriert die Waage und die automatischen Haltepunkte eines Radladers, Schritt für Schritt, ohne dass Empfang nötig ist, und führt ein unter­schriebenes Protokoll.</translation>
    </message>
    <message>
        <source>The law and the rules of the site, the machine maker&apos;s manual and licensed practice come first.</source>
        <translation>Das Gesetz und die Regeln der Einsatzstelle, die Betriebs­anleitung des Maschinen­herstellers und die Praxis zugelassener Fachkräfte gehen vor.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>Making the demo yard: %1 %</source>
        <translation>Demo-Betriebshof wird angelegt: %1 %</translation>
    </message>
    <message>
        <source>Make my yard</source>
        <translation>Meinen Betriebshof anlegen</translation>
    </message>
    <message>
        <source>Your key and the yard&apos;s list of who may sign</source>
        <translation>Der eigene Schlüssel und die Liste der Unterzeichner des Betriebshofs</translation>
    </message>
    <message>
        <source>Look round the demo yard</source>
        <translation>Im Demo-Betriebshof umsehen</translation>
    </message>
    <message>
        <source>Invented machines, people and records, to practise on</source>
        <translation>Erfundene Maschinen, Personen und Protokolle zum Üben</translation>
    </message>
    <message>
        <source>Join a yard</source>
        <translation>Einem Betriebshof beitreten</translation>
    </message>
    <message>
        <source>It is on another phone, whose owner lets you in</source>
        <translation>Er ist auf einem anderen Telefon, das Sie aufnimmt</translation>
    </message>
</context>
<context>
    <name>Flash</name>
    <message>
        <source>Once more</source>
        <translation>Noch einmal</translation>
    </message>
    <message>
        <source>Pass complete</source>
        <translation>Durchgang vollständig</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>Gehalten</translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Working</source>
        <translation>Arbeitet</translation>
    </message>
</context>
<context>
    <name>HistoryChart</name>
    <message>
        <source>It may lie between %1 and %2.</source>
        <translation>Zulässig ist %1 bis %2.</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) from %1 to %2, between %3 and %4, the last %5.</source>
        <translation>
            <numerusform>%n Messwert von %1 bis %2, zwischen %3 und %4, zuletzt %5.</numerusform>
            <numerusform>%n Messwerte von %1 bis %2, zwischen %3 und %4, zuletzt %5.</numerusform>
        </translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Gemessen</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Toleranz</translation>
    </message>
    <message>
        <source>Taught anew</source>
        <translation>Neu eingelernt</translation>
    </message>
</context>
<context>
    <name>HistoryPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 mit %2</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Noch keine.</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Nullpunkt</translation>
    </message>
    <message>
        <source>What it showed with an empty bucket, as found, in %1</source>
        <translation>Anzeige mit leerer Schaufel, wie vorgefunden, in %1</translation>
    </message>
    <message>
        <source>Span</source>
        <translation>Spanne</translation>
    </message>
    <message>
        <source>What it showed of a known mass less its zero, in % of that mass</source>
        <translation>Anzeige einer bekannten Masse minus Nullpunkt, in % dieser Masse</translation>
    </message>
    <message>
        <source>Errors of the proofs</source>
        <translation>Abweichungen der Prüfungen</translation>
    </message>
    <message>
        <source>In % of the known mass</source>
        <translation>In % der bekannten Masse</translation>
    </message>
</context>
<context>
    <name>HoldStep</name>
    <message>
        <source>It was disturbed: begin again</source>
        <translation>Es wurde gestört: neu beginnen</translation>
    </message>
    <message>
        <source>Begin: %1</source>
        <translation>Beginnen: %1</translation>
    </message>
    <message numerus="yes">
        <source>%n second(s)</source>
        <translation>
            <numerusform>%n Sekunde</numerusform>
            <numerusform>%n Sekunden</numerusform>
        </translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Fehl­geschlagen</translation>
    </message>
</context>
<context>
    <name>HomePage</name>
    <message>
        <source>Demo yard (invented)</source>
        <translation>Demo-Betriebshof (erfunden)</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) must not be used</source>
        <translation>
            <numerusform>%n Gerät darf nicht benutzt werden</numerusform>
            <numerusform>%n Geräte dürfen nicht benutzt werden</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) due now or soon</source>
        <translation>
            <numerusform>%n Gerät jetzt oder bald fällig</numerusform>
            <numerusform>%n Geräte jetzt oder bald fällig</numerusform>
        </translation>
    </message>
    <message>
        <source>Waiting for a second person</source>
        <translation>Warten auf eine zweite Person</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>Nichts wartet.</translation>
    </message>
    <message>
        <source>%1, since %2</source>
        <translation>%1, seit %2</translation>
    </message>
    <message>
        <source>Confirmed lately</source>
        <translation>Kürzlich bestätigt</translation>
    </message>
    <message>
        <source>Out on hire</source>
        <translation>Vermietet</translation>
    </message>
    <message>
        <source>No unit is out.</source>
        <translation>Kein Gerät ist vermietet.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>seit %1</translation>
    </message>
    <message>
        <source>Go on with</source>
        <translation>Fortsetzen</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Geräte</translation>
    </message>
    <message>
        <source>No unit yet. Add the first one below.</source>
        <translation>Noch kein Gerät. Das erste unten hinzufügen.</translation>
    </message>
    <message>
        <source>locked out</source>
        <translation>gegen Wieder­einschalten gesichert</translation>
    </message>
    <message>
        <source>Add a unit</source>
        <translation>Gerät hinzufügen</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Confirm for another phone</source>
        <translation>Für ein anderes Telefon bestätigen</translation>
    </message>
    <message>
        <source>Reads the code by which it asks</source>
        <translation>Liest den Code, mit dem es fragt</translation>
    </message>
</context>
<context>
    <name>JobMorePage</name>
    <message>
        <source>This job</source>
        <translation>Dieser Auftrag</translation>
    </message>
    <message>
        <source>Go on later</source>
        <translation>Später weitermachen</translation>
    </message>
    <message>
        <source>Nothing is lost; it opens again at this step</source>
        <translation>Nichts geht verloren; der Auftrag öffnet sich wieder bei diesem Schritt</translation>
    </message>
    <message>
        <source>Give the job up</source>
        <translation>Auftrag abbrechen</translation>
    </message>
    <message>
        <source>The job then ends as given up: the machine is made safe, and its scale is tagged not to be used.</source>
        <translation>Der Auftrag endet dann als abgebrochen: die Maschine wird gesichert, und an ihre Waage kommt der Warn­anhänger, dass sie nicht benutzt werden darf.</translation>
    </message>
    <message>
        <source>Hold to give up</source>
        <translation>Zum Abbrechen halten</translation>
    </message>
    <message>
        <source>Keep on working</source>
        <translation>Weiterarbeiten</translation>
    </message>
    <message>
        <source>Done so far, the newest first</source>
        <translation>Bisher erledigt, das Neueste zuerst</translation>
    </message>
    <message>
        <source>(does not count)</source>
        <translation>(zählt nicht)</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Laufende Messwerte</translation>
    </message>
    <message>
        <source>None are open</source>
        <translation>Keine geöffnet</translation>
    </message>
    <message>
        <source>They are coming</source>
        <translation>Sie kommen</translation>
    </message>
    <message>
        <source>They have stopped</source>
        <translation>Sie bleiben aus</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Diagramme</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Fahrten, was die Anpassung übrig lässt, Abweichungen der Prüfung</translation>
    </message>
</context>
<context>
    <name>JobPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 mit %2</translation>
    </message>
    <message>
        <source>practice, invented</source>
        <translation>Übung, erfunden</translation>
    </message>
    <message>
        <source>Step %1 of %2</source>
        <translation>Schritt %1 von %2</translation>
    </message>
    <message>
        <source>The job has stopped. Make the machine safe first.</source>
        <translation>Der Auftrag wurde angehalten. Zuerst die Maschine sichern.</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>Nicht bestanden</translation>
    </message>
    <message>
        <source>It was: %1</source>
        <translation>Es war: %1</translation>
    </message>
    <message>
        <source>Do this now:</source>
        <translation>Jetzt ausführen:</translation>
    </message>
    <message>
        <source>Do the last step again</source>
        <translation>Letzten Schritt wiederholen</translation>
    </message>
    <message>
        <source>What was said stays on the record and no longer counts</source>
        <translation>Die Angabe bleibt im Protokoll und zählt nicht mehr</translation>
    </message>
    <message>
        <source>All that was done so far, giving up, going on later</source>
        <translation>Alles bisher Erledigte, Abbrechen, später weitermachen</translation>
    </message>
    <message>
        <source>What the survey found</source>
        <translation>Was die Vermessung ergeben hat</translation>
    </message>
</context>
<context>
    <name>JoinPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Einem Betriebshof beitreten</translation>
    </message>
    <message>
        <source>The yard is on another phone. This one makes a key of your own, and asks that phone to let you in.</source>
        <translation>Der Betriebshof ist auf einem anderen Telefon. Dieses erstellt einen eigenen Schlüssel für Sie und bittet jenes, Sie aufzunehmen.</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Eigener Name</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Passphrase: 12 Zeichen oder mehr, am besten einige Wörter</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>Dieselbe Passphrase noch einmal</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>Das ist nicht dieselbe.</translation>
    </message>
    <message>
        <source>It locks your signing key on this phone. Nobody can recover it: if it is lost, you join again with a new key.</source>
        <translation>Sie sperrt auf diesem Telefon den eigenen Schlüssel zum Unter­schreiben. Niemand kann sie wieder­herstellen: Ist sie verloren, treten Sie mit einem neuen Schlüssel wieder bei.</translation>
    </message>
    <message>
        <source>Make my key</source>
        <translation>Meinen Schlüssel erstellen</translation>
    </message>
</context>
<context>
    <name>JoiningPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Einem Betriebshof beitreten</translation>
    </message>
    <message>
        <source>Code that asks to be let in</source>
        <translation>Code, der um Aufnahme bittet</translation>
    </message>
    <message>
        <source>Your key begins with %1</source>
        <translation>Ihr Schlüssel beginnt mit %1</translation>
    </message>
    <message>
        <source>1. On the phone that has the yard&apos;s key, open Settings, People, &quot;Add somebody on their own phone&quot;, and read this code. It holds for a day.</source>
        <translation>1. Auf dem Telefon, das den Schlüssel des Betriebshofs hat, Einstellungen, Personen, „Jemanden auf eigenem Telefon aufnehmen“ öffnen und diesen Code lesen. Er gilt einen Tag.</translation>
    </message>
    <message>
        <source>2. Compare on both screens how the key begins. Then read the code that the other phone shows.</source>
        <translation>2. Vergleichen Sie auf beiden Bildschirmen, wie der Schlüssel beginnt. Lesen Sie dann den Code, den das andere Telefon zeigt.</translation>
    </message>
    <message>
        <source>Hold this phone over the yard&apos;s phone, so that the whole code is in the picture.</source>
        <translation>Halten Sie dieses Telefon über das Telefon des Betriebshofs, sodass der ganze Code im Bild ist.</translation>
    </message>
    <message>
        <source>Your passphrase, to make a new code</source>
        <translation>Ihre Passphrase, für einen neuen Code</translation>
    </message>
    <message>
        <source>Make a new code</source>
        <translation>Neuen Code erstellen</translation>
    </message>
    <message>
        <source>Make a yard of my own instead</source>
        <translation>Lieber einen eigenen Betriebshof anlegen</translation>
    </message>
    <message>
        <source>The key that was made here is then removed. If it has been let in already, have it revoked.</source>
        <translation>Der hier erstellte Schlüssel wird dann entfernt. Ist er schon aufgenommen, ihn widerrufen lassen.</translation>
    </message>
    <message>
        <source>Hold to remove the key</source>
        <translation>Zum Entfernen des Schlüssels halten</translation>
    </message>
    <message>
        <source>Keep the key</source>
        <translation>Schlüssel behalten</translation>
    </message>
    <message>
        <source>Read the yard&apos;s code</source>
        <translation>Code des Betriebshofs lesen</translation>
    </message>
    <message>
        <source>Make the code</source>
        <translation>Code erstellen</translation>
    </message>
    <message>
        <source>Show my code again</source>
        <translation>Meinen Code wieder zeigen</translation>
    </message>
</context>
<context>
    <name>Keypad</name>
    <message>
        <source>Delete the last digit</source>
        <translation>Letzte Ziffer löschen</translation>
    </message>
    <message>
        <source>Plus or minus</source>
        <translation>Plus oder minus</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Dezimalzeichen</translation>
    </message>
</context>
<context>
    <name>KeysLostPage</name>
    <message>
        <source>The keys are not on this phone</source>
        <translation>Die Schlüssel sind nicht auf diesem Telefon</translation>
    </message>
    <message>
        <source>Units, jobs and records of the yard are here, but no key to sign with. So it is after a phone was restored from a backup: backups hold no keys, so that nobody else can sign with yours.</source>
        <translation>Geräte, Aufträge und Protokolle des Betriebshofs sind da, aber kein Schlüssel zum Unter­schreiben. So ist es, nachdem ein Telefon aus einer Sicherung wieder­hergestellt wurde: Sicherungen enthalten keine Schlüssel, damit niemand sonst damit unterschreiben kann.</translation>
    </message>
    <message>
        <source>Nothing is lost: what was signed stays signed, and can be checked. With new keys you go on. The yard&apos;s list of who may sign then begins anew, with all who were on it, and other phones of the yard must accept it.</source>
        <translation>Nichts ist verloren: Unter­schriebenes bleibt unterschrieben und prüfbar. Mit neuen Schlüsseln geht es weiter. Die Liste des Betriebshofs, wer unterschreiben darf, beginnt dann neu, mit allen, die darauf standen, und andere Telefone des Betriebshofs müssen sie annehmen.</translation>
    </message>
    <message>
        <source>If the old phone was lost or stolen, its key can still sign. Have it revoked.</source>
        <translation>Ist das alte Telefon verloren oder gestohlen, kann sein Schlüssel noch unterschreiben. Ihn widerrufen lassen.</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Neue Schlüssel erstellen</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Anderen Betriebshof öffnen</translation>
    </message>
</context>
<context>
    <name>LevelPage</name>
    <message>
        <source>The phone as a level</source>
        <translation>Das Telefon als Neigungsmesser</translation>
    </message>
    <message>
        <source>A raised boom can come down.</source>
        <translation>Ein angehobenes Hubgerüst kann herunter­kommen.</translation>
    </message>
    <message>
        <source>Whoever is under it is crushed.</source>
        <translation>Wer darunter ist, wird zerquetscht.</translation>
    </message>
    <message>
        <source>Measure on a raised boom only with the engine off, the key removed, the boom support fitted, and nobody under it.</source>
        <translation>An einem angehobenen Hubgerüst nur messen, wenn der Motor aus, der Schlüssel abgezogen und die Hubgerüststütze angebracht ist und niemand darunter ist.</translation>
    </message>
    <message>
        <source>This phone has no accelerometer. Use an inclinometer and type what it shows.</source>
        <translation>Dieses Telefon hat keinen Beschleunigungs­sensor. Einen Neigungsmesser verwenden und eintippen, was er zeigt.</translation>
    </message>
    <message>
        <source>Slope along the phone&apos;s long side, as it lay first:</source>
        <translation>Neigung entlang der langen Seite des Telefons, so wie es zuerst lag:</translation>
    </message>
    <message>
        <source>2. Turn the phone half round on the same spot, its top where its foot was. Hands off, then measure again.</source>
        <translation>2. Das Telefon auf derselben Stelle halb herumdrehen, oben dorthin, wo unten war. Hände weg, dann erneut messen.</translation>
    </message>
    <message>
        <source>1. Lay the phone flat on the bucket floor, the boom or the ground, its long side along the machine. Hands off, then measure.</source>
        <translation>1. Das Telefon flach auf den Schaufelboden, das Hubgerüst oder den Erdboden legen, die lange Seite längs zur Maschine. Hände weg, dann messen.</translation>
    </message>
    <message>
        <source>Measuring: keep your hands off</source>
        <translation>Messung läuft: Hände weg</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Begin again</source>
        <translation>Neu beginnen</translation>
    </message>
</context>
<context>
    <name>LiftChart</name>
    <message>
        <source>%1: %2 to %3 %4, from %5° to %6°.</source>
        <translation>%1: %2 bis %3 %4, von %5° bis %6°.</translation>
    </message>
    <message>
        <source>Fitted tare: %1 to %2 %3, known to ± %4 %3 (95 %).</source>
        <translation>Angepasste Tara: %1 bis %2 %3, bekannt auf ± %4 %3 (95 %).</translation>
    </message>
    <message>
        <source>Lift pressure</source>
        <translation>Hubdruck</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom&apos;s angle</source>
        <translation>Druck in %1, über dem Winkel des Hubgerüsts</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom sensor&apos;s reading</source>
        <translation>Druck in %1, über dem Messwert des Hubgerüst­sensors</translation>
    </message>
    <message>
        <source>Chart of the lift pressure.</source>
        <translation>Diagramm des Hubdrucks.</translation>
    </message>
    <message>
        <source>This pass</source>
        <translation>Diese Fahrt</translation>
    </message>
    <message>
        <source>Fitted tare</source>
        <translation>Angepasste Tara</translation>
    </message>
    <message>
        <source>Where it lies with 95 % probability</source>
        <translation>Wo sie mit 95 % Wahrschein­lichkeit liegt</translation>
    </message>
</context>
<context>
    <name>LiveBar</name>
    <message>
        <source>No readings are coming. They are waited for.</source>
        <translation>Es kommen keine Messwerte. Auf sie wird gewartet.</translation>
    </message>
    <message>
        <source>Boom rising</source>
        <translation>Hubgerüst steigt</translation>
    </message>
    <message>
        <source>Boom lowering</source>
        <translation>Hubgerüst senkt sich</translation>
    </message>
    <message>
        <source>Standing still</source>
        <translation>Stillstand</translation>
    </message>
    <message>
        <source>Boom %1°</source>
        <translation>Hubgerüst %1°</translation>
    </message>
    <message>
        <source>wanted %1°</source>
        <translation>verlangt %1°</translation>
    </message>
    <message>
        <source>%1 % done</source>
        <translation>%1 % erledigt</translation>
    </message>
    <message>
        <source>Practice: %1 It stays so until you say under Live readings that all is well, as if it had been mended.</source>
        <translation>Übung: %1 Es bleibt so, bis unter „Laufende Messwerte“ gesagt wird, dass alles in Ordnung ist, als wäre es behoben.</translation>
    </message>
</context>
<context>
    <name>MachineView</name>
    <message>
        <source>Side view of the loader. Measure from A to B: %1</source>
        <translation>Seitenansicht des Laders. Von A nach B messen: %1</translation>
    </message>
    <message>
        <source>Side view of the loader, boom at %1 degrees</source>
        <translation>Seitenansicht des Radladers, Hubgerüst bei %1 Grad</translation>
    </message>
    <message>
        <source>Side view of the loader</source>
        <translation>Seitenansicht des Radladers</translation>
    </message>
    <message>
        <source>%1 degrees wanted</source>
        <translation>verlangt: %1 Grad</translation>
    </message>
    <message>
        <source>plausible, not its own pins</source>
        <translation>plausibel, nicht die eigenen Bolzen</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Press to close this message</source>
        <translation>Drücken, um diese Meldung zu schließen</translation>
    </message>
</context>
<context>
    <name>MakeYardPage</name>
    <message>
        <source>Make my yard</source>
        <translation>Meinen Betriebshof anlegen</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Eigener Name</translation>
    </message>
    <message>
        <source>You are mostly</source>
        <translation>Meistens tätig als</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Passphrase: 12 Zeichen oder mehr, am besten einige Wörter</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>Dieselbe Passphrase noch einmal</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>Das ist nicht dieselbe.</translation>
    </message>
    <message>
        <source>It locks your signing key and the yard&apos;s key on this phone. Nobody can recover it: write it down and keep it where the office keeps its keys. Others can be added later, each with a key of their own.</source>
        <translation>Sie sperrt auf diesem Telefon den eigenen Schlüssel zum Unter­schreiben und den Schlüssel des Betriebshofs. Niemand kann sie wieder­herstellen: aufschreiben und dort aufbewahren, wo das Büro seine Schlüssel aufbewahrt. Weitere Personen können später hinzugefügt werden, jede mit einem eigenen Schlüssel.</translation>
    </message>
    <message>
        <source>Make the keys and the yard</source>
        <translation>Schlüssel erzeugen, Betriebshof anlegen</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Neue Schlüssel erstellen</translation>
    </message>
    <message>
        <source>Make the new keys</source>
        <translation>Die neuen Schlüssel erstellen</translation>
    </message>
</context>
<context>
    <name>MonitorStep</name>
    <message>
        <source>In the monitor&apos;s own words, if you like</source>
        <translation>Wenn gewünscht: in den Worten des Monitors</translation>
    </message>
</context>
<context>
    <name>MoveStep</name>
    <message>
        <source>Move the practice loader</source>
        <translation>Übungs­radlader bewegen</translation>
    </message>
    <message>
        <source>It does what the step asks; on a real machine your hands are on the levers</source>
        <translation>Er tut, was der Schritt verlangt; an einer echten Maschine sind die eigenen Hände an den Hebeln</translation>
    </message>
    <message>
        <source>The pass is done</source>
        <translation>Durchgang erledigt</translation>
    </message>
    <message>
        <source>It stands there</source>
        <translation>Steht in Stellung</translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Fehl­geschlagen</translation>
    </message>
    <message>
        <source>Boom at its lowest</source>
        <translation>Hubgerüst ganz unten</translation>
    </message>
    <message>
        <source>Boom at its highest</source>
        <translation>Hubgerüst ganz oben</translation>
    </message>
    <message>
        <source>Boom level</source>
        <translation>Hubgerüst waagerecht</translation>
    </message>
    <message>
        <source>Boom at carry height</source>
        <translation>Hubgerüst auf Transporthöhe</translation>
    </message>
    <message>
        <source>Boom down, on the ground</source>
        <translation>Hubgerüst unten, auf dem Boden</translation>
    </message>
    <message>
        <source>bucket racked back</source>
        <translation>Schaufel eingekippt</translation>
    </message>
    <message>
        <source>bucket level</source>
        <translation>Schaufel waagerecht</translation>
    </message>
    <message>
        <source>bucket dumped</source>
        <translation>Schaufel ausgekippt</translation>
    </message>
    <message>
        <source>come from below</source>
        <translation>von unten kommen</translation>
    </message>
    <message>
        <source>come from above</source>
        <translation>von oben kommen</translation>
    </message>
    <message>
        <source>Raise</source>
        <translation>Heben</translation>
    </message>
    <message>
        <source>Lower</source>
        <translation>Absenken</translation>
    </message>
    <message>
        <source>slowly</source>
        <translation>langsam</translation>
    </message>
    <message>
        <source>fast</source>
        <translation>schnell</translation>
    </message>
    <message>
        <source>at your own pace</source>
        <translation>in eigenem Tempo</translation>
    </message>
    <message>
        <source>bucket empty</source>
        <translation>Schaufel leer</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>mit der Prüfmasse</translation>
    </message>
    <message>
        <source>This pass needs a log: open live readings, or bring the log as a file.</source>
        <translation>Dieser Durchgang braucht eine Aufzeichnung: laufende Messwerte öffnen oder die Aufzeichnung als Datei holen.</translation>
    </message>
    <message>
        <source>Bring the log as a file</source>
        <translation>Aufzeichnung als Datei holen</translation>
    </message>
    <message>
        <source>Practise with the simulated loader</source>
        <translation>Mit dem simulierten Radlader üben</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Hub­aufzeichnungen (%1)</translation>
    </message>
</context>
<context>
    <name>NoteStep</name>
    <message>
        <source>Write it down</source>
        <translation>Aufschreiben</translation>
    </message>
    <message>
        <source>Nothing to note</source>
        <translation>Nichts aufzuschreiben</translation>
    </message>
    <message>
        <source>In your own words</source>
        <translation>In eigenen Worten</translation>
    </message>
</context>
<context>
    <name>PeoplePage</name>
    <message>
        <source>People</source>
        <translation>Personen</translation>
    </message>
    <message>
        <source>May not sign any more</source>
        <translation>Darf nicht mehr unterschreiben</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>Schlüssel %1</translation>
    </message>
    <message>
        <source>Their name</source>
        <translation>Name dieser Person</translation>
    </message>
    <message>
        <source>A passphrase of their own, 12 characters or more</source>
        <translation>Eine eigene Passphrase dieser Person, 12 Zeichen oder mehr</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>Passphrase des Betriebshofs</translation>
    </message>
    <message>
        <source>Add this person</source>
        <translation>Diese Person hinzufügen</translation>
    </message>
    <message>
        <source>Add a person</source>
        <translation>Person hinzufügen</translation>
    </message>
    <message>
        <source>Add somebody on their own phone</source>
        <translation>Jemanden auf eigenem Telefon aufnehmen</translation>
    </message>
    <message>
        <source>Signs on their own phone</source>
        <translation>Unterschreibt auf dem eigenen Telefon</translation>
    </message>
</context>
<context>
    <name>Plot</name>
    <message>
        <source>Slow, lowering</source>
        <translation>Langsam, senkend</translation>
    </message>
    <message>
        <source>Fast, lowering</source>
        <translation>Schnell, senkend</translation>
    </message>
    <message>
        <source>Slow, raising</source>
        <translation>Langsam, hebend</translation>
    </message>
    <message>
        <source>Fast, raising</source>
        <translation>Schnell, hebend</translation>
    </message>
</context>
<context>
    <name>ProofChart</name>
    <message>
        <source>Reading %1: %2 %</source>
        <translation>Messwert %1: %2 %</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>außerhalb</translation>
    </message>
    <message>
        <source>Mean %1 %.</source>
        <translation>Mittel %1 %.</translation>
    </message>
    <message>
        <source>The mean may be off by %1 %.</source>
        <translation>Das Mittel darf um %1 % abweichen.</translation>
    </message>
    <message>
        <source>Errors of the proof</source>
        <translation>Abweichungen der Prüfung</translation>
    </message>
    <message>
        <source>Error in % of the known mass, over the number of the reading</source>
        <translation>Abweichung in % der bekannten Masse, über der Nummer des Messwerts</translation>
    </message>
    <message>
        <source>Chart of the errors of the proof.</source>
        <translation>Diagramm der Abweichungen der Prüfung.</translation>
    </message>
    <message>
        <source>Within the tolerance</source>
        <translation>Innerhalb der Toleranz</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>Außerhalb</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>Tolerance of the mean</source>
        <translation>Toleranz des Mittels</translation>
    </message>
</context>
<context>
    <name>ReadingStep</name>
    <message>
        <source>steady</source>
        <translation>ruhig</translation>
    </message>
    <message>
        <source>not steady yet</source>
        <translation>noch nicht ruhig</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Eintragen</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>%1 %2 eintragen</translation>
    </message>
    <message>
        <source>Typed: %1</source>
        <translation>Eingetippt: %1</translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation>Zwischen %1 und %2</translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation>Mindestens %1</translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation>Höchstens %1</translation>
    </message>
    <message>
        <source>Last time: %1</source>
        <translation>Letztes Mal: %1</translation>
    </message>
    <message>
        <source>Practice: the instrument shows %1</source>
        <translation>Übung: das Messgerät zeigt %1</translation>
    </message>
    <message>
        <source>Unit %1</source>
        <translation>Einheit %1</translation>
    </message>
    <message>
        <source>Take the live value</source>
        <translation>Laufenden Wert übernehmen</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>nothing comes yet</source>
        <translation>noch kommt nichts</translation>
    </message>
    <message>
        <source>It is the known mass: %1</source>
        <translation>Es ist die bekannte Masse: %1</translation>
    </message>
    <message>
        <source>The app weighed %1 in this lift</source>
        <translation>Die App hat in diesem Hub %1 gewogen</translation>
    </message>
    <message>
        <source>± %1. Take it where the machine itself takes no values</source>
        <translation>± %1. Nehmen, wo die Maschine selbst keine Werte annimmt</translation>
    </message>
    <message>
        <source>Not measured</source>
        <translation>Nicht gemessen</translation>
    </message>
    <message>
        <source>In the picture: the slope of the line from A to B</source>
        <translation>Im Bild: die Neigung der Linie von A nach B</translation>
    </message>
    <message>
        <source>In the picture: from A to B</source>
        <translation>Im Bild: von A nach B</translation>
    </message>
    <message>
        <source>The loader is a plausible one: its own pins are not known yet.</source>
        <translation>Der Lader ist ein plausibler: Seine eigenen Bolzen sind noch nicht bekannt.</translation>
    </message>
    <message>
        <source>Take the phone&apos;s level: %1°</source>
        <translation>Wert der Telefon-Wasserwaage nehmen: %1°</translation>
    </message>
    <message>
        <source>Measure with the phone as a level</source>
        <translation>Mit dem Telefon als Wasserwaage messen</translation>
    </message>
    <message>
        <source>%1. Measured with the phone&apos;s top towards the bucket?</source>
        <translation>%1. Mit dem oberen Ende des Telefons zur Schaufel gemessen?</translation>
    </message>
    <message>
        <source>Lay it with its top towards the bucket</source>
        <translation>Mit dem oberen Ende zur Schaufel auflegen</translation>
    </message>
</context>
<context>
    <name>RecordPage</name>
    <message>
        <source>Record</source>
        <translation>Protokoll</translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation>Weitergeben</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>Als PDF speichern</translation>
    </message>
    <message>
        <source>Save the sealed record itself</source>
        <translation>Das versiegelte Protokoll selbst speichern</translation>
    </message>
    <message>
        <source>Any program that knows JSON Web Signatures can check it</source>
        <translation>Jedes Programm, das JSON Web Signatures kennt, kann es prüfen</translation>
    </message>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>Warn­anhänger als PDF speichern</translation>
    </message>
    <message>
        <source>Sign it too</source>
        <translation>Auch unterschreiben</translation>
    </message>
    <message>
        <source>A further signature, with your own key</source>
        <translation>Eine weitere Unterschrift, mit dem eigenen Schlüssel</translation>
    </message>
    <message>
        <source>Correct it</source>
        <translation>Berichtigen</translation>
    </message>
    <message>
        <source>By a new record that names this one; this one stays as it is</source>
        <translation>Durch ein neues Protokoll, das dieses nennt; dieses bleibt, wie es ist</translation>
    </message>
    <message>
        <source>What was wrong, and what is right</source>
        <translation>Was falsch war und was richtig ist</translation>
    </message>
    <message>
        <source>Seal the correction</source>
        <translation>Berichtigung versiegeln</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Diagramme</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Fahrten, was die Anpassung übrig lässt, Abweichungen der Prüfung</translation>
    </message>
    <message>
        <source>Calibration certificate</source>
        <translation>Kalibrierschein</translation>
    </message>
    <message>
        <source>To print, or for programs</source>
        <translation>Zum Drucken oder für Programme</translation>
    </message>
    <message>
        <source>Where it stands</source>
        <translation>Stand</translation>
    </message>
</context>
<context>
    <name>ResidualChart</name>
    <message>
        <source>bucket empty</source>
        <translation>Schaufel leer</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>mit der Prüfmasse</translation>
    </message>
    <message>
        <source>with a load</source>
        <translation>mit einer Last</translation>
    </message>
    <message>
        <source>Standard deviation %1 %2, largest %3 %2</source>
        <translation>Standard­abweichung %1 %2, größte %3 %2</translation>
    </message>
    <message>
        <source>What the fit leaves</source>
        <translation>Was die Anpassung übrig lässt</translation>
    </message>
    <message>
        <source>Measured less fitted, in %1, over the boom&apos;s angle; the chosen pass is drawn thick</source>
        <translation>Gemessen minus angepasst, in %1, über dem Winkel des Hubgerüsts; die gewählte Fahrt ist dick gezeichnet</translation>
    </message>
    <message>
        <source>Chart of what the fit leaves.</source>
        <translation>Diagramm dessen, was die Anpassung übrig lässt.</translation>
    </message>
</context>
<context>
    <name>ResumeStep</name>
    <message>
        <source>Go on</source>
        <translation>Weitermachen</translation>
    </message>
    <message>
        <source>Take the job over as %1</source>
        <translation>Auftrag übernehmen als %1</translation>
    </message>
    <message>
        <source>The job was interrupted</source>
        <translation>Der Auftrag wurde unterbrochen</translation>
    </message>
    <message>
        <source>Everything that was done is kept. Before you go on: is the machine as you left it, and is nobody near it? Cautions that still hold are shown again, and &quot;the zone is clear&quot; is asked for again.</source>
        <translation>Alles Erledigte bleibt erhalten. Vor dem Weitermachen: ist die Maschine so, wie sie verlassen wurde, und ist niemand in ihrer Nähe? Warnhinweise, die noch gelten, werden erneut gezeigt, und „Gefahren­bereich frei“ wird erneut verlangt.</translation>
    </message>
    <message>
        <source>Somebody else</source>
        <translation>Jemand anderes</translation>
    </message>
    <message>
        <source>%1 is in charge.</source>
        <translation>Verantwortlich ist %1.</translation>
    </message>
    <message>
        <source>They go on with it. What you confirm as a second person you then confirm beside them, with your own passphrase.</source>
        <translation>Diese Person macht damit weiter. Was die zweite Person bestätigt, bestätigt sie dann neben ihr, mit eigener Passphrase.</translation>
    </message>
</context>
<context>
    <name>SavedFile</name>
    <message>
        <source>Saved: %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
    <message>
        <source>Hand the file to another app</source>
        <translation>Die Datei an eine andere App geben</translation>
    </message>
    <message>
        <source>Hand the file to</source>
        <translation>Die Datei geben an</translation>
    </message>
</context>
<context>
    <name>ScanView</name>
    <message>
        <source>This device has no camera. Choose a picture of the code.</source>
        <translation>Dieses Gerät hat keine Kamera. Wählen Sie ein Bild des Codes.</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>Das Telefon lässt die App die Kamera nicht benutzen. In den Einstellungen des Telefons erlauben oder ein Bild wählen.</translation>
    </message>
    <message>
        <source>There is no code in this picture. Take it from nearer and straight from the front, the whole code in it.</source>
        <translation>In diesem Bild ist kein Code. Nehmen Sie es näher und gerade von vorn auf, mit dem ganzen Code darin.</translation>
    </message>
    <message>
        <source>Choose a picture of the code</source>
        <translation>Ein Bild des Codes wählen</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Bilder (%1)</translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Darstellung</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>Night</source>
        <translation>Nacht</translation>
    </message>
    <message>
        <source>Sunlight</source>
        <translation>Sonnenlicht</translation>
    </message>
    <message>
        <source>Black on white, thick lines</source>
        <translation>Schwarz auf Weiß, dicke Linien</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Schriftgröße</translation>
    </message>
    <message>
        <source>Gloves: larger keys</source>
        <translation>Handschuhe: größere Tasten</translation>
    </message>
    <message>
        <source>Wet glass: hold a key for it to count</source>
        <translation>Nasses Glas: eine Taste zählt erst, wenn sie gehalten wird</translation>
    </message>
    <message>
        <source>Sounds and vibration</source>
        <translation>Töne und Vibration</translation>
    </message>
    <message>
        <source>Speak the instructions</source>
        <translation>Anweisungen vorlesen</translation>
    </message>
    <message>
        <source>Speak the instructions (this phone has no voice in this language)</source>
        <translation>Anweisungen vorlesen (dieses Telefon hat keine Stimme in dieser Sprache)</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Geräte</translation>
    </message>
    <message>
        <source>Metric: kg, bar, °C, m</source>
        <translation>Metrisch: kg, bar, °C, m</translation>
    </message>
    <message>
        <source>US: lb, psi, °F, in</source>
        <translation>US: lb, psi, °F, in</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>This translation was made by a machine. A native speaker who knows the trade has still to review it.</source>
        <translation>Diese Übersetzung wurde von einer Maschine erstellt. Jemand, der die Sprache als Muttersprache spricht und das Fach kennt, muss sie noch prüfen.</translation>
    </message>
    <message>
        <source>You act as</source>
        <translation>Handelt als</translation>
    </message>
    <message>
        <source>People who may sign on this phone</source>
        <translation>Personen, die auf diesem Telefon unterschreiben dürfen</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Laufende Messwerte</translation>
    </message>
    <message>
        <source>The phone as a level</source>
        <translation>Das Telefon als Neigungsmesser</translation>
    </message>
    <message>
        <source>Lock</source>
        <translation>Sperren</translation>
    </message>
    <message>
        <source>The next person opens it with their own key</source>
        <translation>Die nächste Person öffnet mit ihrem eigenen Schlüssel</translation>
    </message>
    <message>
        <source>Hingepin %1. The app is free software under the GNU General Public License, version 3 or later; its engine under the Apache License 2.0. It never writes to a machine. A verdict here does not make a scale legal for trade; that needs the authority in charge.</source>
        <translation>Hingepin %1. Die App ist freie Software unter der GNU General Public License, Version 3 oder später; ihre Engine unter der Apache License 2.0. Sie schreibt nie in eine Maschine. Ein Urteil hier lässt eine Waage nicht für den Handel zu; dafür ist die zuständige Behörde nötig.</translation>
    </message>
    <message>
        <source>Save the app&apos;s log</source>
        <translation>Protokoll der App sichern</translation>
    </message>
    <message>
        <source>What it did and what failed, without names: for whoever looks into a fault</source>
        <translation>Was sie tat und was misslang, ohne Namen: für alle, die einem Fehler nachgehen</translation>
    </message>
    <message>
        <source>Exchange with the office</source>
        <translation>Austausch mit dem Büro</translation>
    </message>
    <message>
        <source>Where records are sent to, and what still waits</source>
        <translation>Wohin Protokolle gehen und was noch wartet</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Wonach Prüfungen auf diesem Betriebshof beurteilt werden</translation>
    </message>
    <message>
        <source>Tolerance and decision rule, where a unit does not say otherwise</source>
        <translation>Toleranz und Entscheidungs­regel, wo ein Gerät nichts anderes angibt</translation>
    </message>
</context>
<context>
    <name>SignStep</name>
    <message>
        <source>Sign</source>
        <translation>Unter­schreiben</translation>
    </message>
    <message>
        <source>Clear the glass</source>
        <translation>Unterschrift löschen</translation>
    </message>
    <message>
        <source>Absent</source>
        <translation>Abwesend</translation>
    </message>
    <message>
        <source>Refused</source>
        <translation>Verweigert</translation>
    </message>
    <message>
        <source>You sign as %1, %2, with your key on this phone.</source>
        <translation>Unterschrift als %1, %2, mit dem eigenen Schlüssel auf diesem Telefon.</translation>
    </message>
</context>
<context>
    <name>SignaturePad</name>
    <message>
        <source>Sign here with a finger</source>
        <translation>Hier mit dem Finger unterschreiben</translation>
    </message>
</context>
<context>
    <name>StateMark</name>
    <message>
        <source>ready</source>
        <translation>bereit</translation>
    </message>
    <message>
        <source>due soon</source>
        <translation>bald fällig</translation>
    </message>
    <message>
        <source>due</source>
        <translation>fällig</translation>
    </message>
    <message>
        <source>restricted</source>
        <translation>eingeschränkt</translation>
    </message>
    <message>
        <source>do not use</source>
        <translation>nicht benutzen</translation>
    </message>
    <message>
        <source>not calibrated</source>
        <translation>nicht kalibriert</translation>
    </message>
</context>
<context>
    <name>SyncPage</name>
    <message>
        <source>Exchange with the office</source>
        <translation>Austausch mit dem Büro</translation>
    </message>
    <message>
        <source>Records, signatures and photos go to a place of the yard&apos;s own and come from there to every phone. What arrives is verified before it counts.</source>
        <translation>Protokolle, Unterschriften und Fotos gehen an einen Ort, der dem Hof gehört, und kommen von dort auf jedes Telefon. Was ankommt, wird geprüft, bevor es zählt.</translation>
    </message>
    <message>
        <source>The password is not kept for you on this phone. Enter it once.</source>
        <translation>Das Passwort ist für Sie auf diesem Telefon nicht hinterlegt. Geben Sie es einmal ein.</translation>
    </message>
    <message>
        <source>Kind of place</source>
        <translation>Art des Ortes</translation>
    </message>
    <message>
        <source>Share (WebDAV)</source>
        <translation>Freigabe (WebDAV)</translation>
    </message>
    <message>
        <source>Object storage (S3)</source>
        <translation>Objektspeicher (S3)</translation>
    </message>
    <message>
        <source>Address, beginning with https://</source>
        <translation>Adresse, beginnt mit https://</translation>
    </message>
    <message>
        <source>Bucket</source>
        <translation>Bucket</translation>
    </message>
    <message>
        <source>Region</source>
        <translation>Region</translation>
    </message>
    <message>
        <source>Id of the access key</source>
        <translation>Kennung des Zugangs­schlüssels</translation>
    </message>
    <message>
        <source>User name</source>
        <translation>Benutzername</translation>
    </message>
    <message>
        <source>Secret key</source>
        <translation>Geheimer Schlüssel</translation>
    </message>
    <message>
        <source>Password of the share</source>
        <translation>Passwort der Freigabe</translation>
    </message>
    <message>
        <source>By itself, when there is a network</source>
        <translation>Von selbst, wenn es ein Netz gibt</translation>
    </message>
    <message>
        <source>Also over a network that is paid for by what it carries</source>
        <translation>Auch über ein Netz, das nach Datenmenge bezahlt wird</translation>
    </message>
    <message>
        <source>Waits to be sent</source>
        <translation>Wartet auf das Senden</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>Nichts wartet.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>seit %1</translation>
    </message>
    <message>
        <source>and %1 more</source>
        <translation>und %1 weitere</translation>
    </message>
    <message>
        <source>Arrived and not believed</source>
        <translation>Angekommen und nicht geglaubt</translation>
    </message>
    <message>
        <source>Keep this place</source>
        <translation>Diesen Ort behalten</translation>
    </message>
    <message>
        <source>Send and fetch now</source>
        <translation>Jetzt senden und holen</translation>
    </message>
    <message>
        <source>Stop for now</source>
        <translation>Für jetzt anhalten</translation>
    </message>
    <message>
        <source>It goes on from here the next time</source>
        <translation>Das nächste Mal geht es hier weiter</translation>
    </message>
    <message>
        <source>Change the place</source>
        <translation>Den Ort ändern</translation>
    </message>
    <message>
        <source>Set up the place</source>
        <translation>Den Ort einrichten</translation>
    </message>
    <message>
        <source>Certificate of the share&apos;s own authority</source>
        <translation>Zertifikat der eigenen Zertifi­zierungs­stelle</translation>
    </message>
    <message>
        <source>Chosen: %1</source>
        <translation>Gewählt: %1</translation>
    </message>
    <message>
        <source>Only where the yard made its certificate itself: choose the file (PEM) that whoever runs the share gives out</source>
        <translation>Nur wenn der Betriebshof das Zertifikat selbst ausgestellt hat: Wählen Sie die Datei (PEM), die der Betreiber der Freigabe ausgibt</translation>
    </message>
    <message>
        <source>Certificates (%1)</source>
        <translation>Zertifikate (%1)</translation>
    </message>
</context>
<context>
    <name>TagStep</name>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>Warn­anhänger als PDF speichern</translation>
    </message>
    <message>
        <source>The tag hangs on the machine</source>
        <translation>Warn­anhänger hängt an der Maschine</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
</context>
<context>
    <name>TermsPage</name>
    <message>
        <source>How proofs of %1 are judged</source>
        <translation>Wonach Prüfungen von %1 beurteilt werden</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Wonach Prüfungen auf diesem Betriebshof beurteilt werden</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it. What is left open here the yard says.</source>
        <translation>Danach werden Aufträge beurteilt, die ab jetzt beginnen. Was hier offen bleibt, gibt der Betriebshof an.</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it, unless the unit itself says otherwise.</source>
        <translation>Danach werden Aufträge beurteilt, die ab jetzt beginnen, wenn das Gerät selbst nichts anderes angibt.</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Toleranz</translation>
    </message>
    <message>
        <source>As the yard says</source>
        <translation>Wie es der Betriebshof angibt</translation>
    </message>
    <message>
        <source>As each procedure says</source>
        <translation>Wie es der jeweilige Ablauf angibt</translation>
    </message>
    <message>
        <source>A percentage of the load</source>
        <translation>Ein Prozentsatz der Last</translation>
    </message>
    <message>
        <source>A class of OIML R 76</source>
        <translation>Eine Klasse nach OIML R 76</translation>
    </message>
    <message>
        <source>Scales that weigh at rest</source>
        <translation>Waagen, die in Ruhe wägen</translation>
    </message>
    <message>
        <source>A class of OIML R 51, category Y</source>
        <translation>Eine Klasse nach OIML R 51, Kategorie Y</translation>
    </message>
    <message>
        <source>Scales that weigh each load by themselves</source>
        <translation>Waagen, die jede Last selbsttätig wägen</translation>
    </message>
    <message>
        <source>A class of NIST Handbook 44, 2.20</source>
        <translation>Eine Klasse nach NIST Handbook 44, 2.20</translation>
    </message>
    <message>
        <source>Scales in the United States</source>
        <translation>Waagen in den Vereinigten Staaten</translation>
    </message>
    <message>
        <source>Steps of our own</source>
        <translation>Eigene Stufen</translation>
    </message>
    <message>
        <source>Largest error, up or down, %</source>
        <translation>Größte Abweichung nach oben oder unten, %</translation>
    </message>
    <message>
        <source>Per cent of</source>
        <translation>Prozent von</translation>
    </message>
    <message>
        <source>The mass that is lifted</source>
        <translation>Masse, die gehoben wird</translation>
    </message>
    <message>
        <source>The rated payload</source>
        <translation>Nennnutzlast</translation>
    </message>
    <message>
        <source>Class</source>
        <translation>Klasse</translation>
    </message>
    <message>
        <source>Scale division d, %1</source>
        <translation>Teilungswert d, %1</translation>
    </message>
    <message>
        <source>Verification interval e, %1</source>
        <translation>Eichwert e, %1</translation>
    </message>
    <message>
        <source>Which limits</source>
        <translation>Welche Grenzen</translation>
    </message>
    <message>
        <source>Acceptance: new or just repaired</source>
        <translation>Annahme: neu oder eben repariert</translation>
    </message>
    <message>
        <source>Maintenance: in use</source>
        <translation>Erhaltung: in Gebrauch</translation>
    </message>
    <message>
        <source>Initial: new or just repaired</source>
        <translation>Anfänglich: neu oder eben repariert</translation>
    </message>
    <message>
        <source>In service</source>
        <translation>Im Betrieb</translation>
    </message>
    <message>
        <source>Loads up to, %1</source>
        <translation>Lasten bis, %1</translation>
    </message>
    <message>
        <source>Largest error there, %1</source>
        <translation>Größte Abweichung dort, %1</translation>
    </message>
    <message>
        <source>Remove this step</source>
        <translation>Diese Stufe entfernen</translation>
    </message>
    <message>
        <source>One more step</source>
        <translation>Noch eine Stufe</translation>
    </message>
    <message>
        <source>When is it passed?</source>
        <translation>Wann ist sie bestanden?</translation>
    </message>
    <message>
        <source>When its error is within the limit</source>
        <translation>Wenn die Abweichung in der Grenze liegt</translation>
    </message>
    <message>
        <source>Near the limit a wrong verdict is about as likely as a right one</source>
        <translation>Nahe der Grenze ist ein falsches Urteil etwa so wahrscheinlich wie ein richtiges</translation>
    </message>
    <message>
        <source>When it is plain that its error is within the limit</source>
        <translation>Wenn sicher ist, dass die Abweichung in der Grenze liegt</translation>
    </message>
    <message>
        <source>The doubt of the proof counts against the scale</source>
        <translation>Die Unsicherheit der Prüfung zählt gegen die Waage</translation>
    </message>
    <message>
        <source>How sure, %</source>
        <translation>Wie sicher, %</translation>
    </message>
    <message>
        <source>A verdict by any of these does not make a scale legal for trade. That needs the authority in charge.</source>
        <translation>Kein Urteil nach einer dieser Regeln macht eine Waage eichrechtlich zulässig. Dafür ist die zuständige Behörde nötig.</translation>
    </message>
    <message>
        <source>Nothing was saved: see above.</source>
        <translation>Nichts wurde gespeichert: siehe oben.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
</context>
<context>
    <name>UnitEditPage</name>
    <message>
        <source>The machine&apos;s own routine</source>
        <translation>Eigene Routine der Maschine</translation>
    </message>
    <message>
        <source>Readings typed from its monitor</source>
        <translation>Messwerte, vom Monitor eingetippt</translation>
    </message>
    <message>
        <source>Logs or a live feed</source>
        <translation>Aufzeichnungen oder laufende Messwerte</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>%1 bearbeiten</translation>
    </message>
    <message>
        <source>New unit</source>
        <translation>Neues Gerät</translation>
    </message>
    <message>
        <source>Number or name of the unit</source>
        <translation>Nummer oder Name des Geräts</translation>
    </message>
    <message>
        <source>Rated payload, kg</source>
        <translation>Nennnutzlast, kg</translation>
    </message>
    <message>
        <source>Lift cylinders, how many</source>
        <translation>Hubzylinder, Anzahl</translation>
    </message>
    <message>
        <source>Lift cylinder bore, mm</source>
        <translation>Hubzylinder, Bohrung, mm</translation>
    </message>
    <message>
        <source>Lift cylinder rod, mm</source>
        <translation>Hubzylinder, Kolbenstange, mm</translation>
    </message>
    <message>
        <source>Weigh window from boom angle, degrees (if known)</source>
        <translation>Wägefenster ab Winkel des Hubgerüsts, Grad (wenn bekannt)</translation>
    </message>
    <message>
        <source>Weigh window to boom angle, degrees (if known)</source>
        <translation>Wägefenster bis Winkel des Hubgerüsts, Grad (wenn bekannt)</translation>
    </message>
    <message>
        <source>Oil at least, °C, before pressures are taught (if the manual says)</source>
        <translation>Öl mindestens, °C, bevor Drücke eingelernt werden (wenn die Betriebs­anleitung es angibt)</translation>
    </message>
    <message>
        <source>Test mass of the yard, kg (if there is one)</source>
        <translation>Prüfmasse des Betriebshofs, kg (wenn es eine gibt)</translation>
    </message>
    <message>
        <source>Due again after, hours (if the yard says)</source>
        <translation>Wieder fällig nach, Stunden (wenn der Betriebshof es angibt)</translation>
    </message>
    <message>
        <source>It can be taught by</source>
        <translation>Einlernen möglich durch</translation>
    </message>
    <message>
        <source>Its monitor shows</source>
        <translation>Der Monitor zeigt</translation>
    </message>
    <message>
        <source>Press the unit in which it shows it; press it again if it does not show it at all. Mind which ton it is.</source>
        <translation>Die Einheit drücken, in der er es zeigt; noch einmal drücken, wenn er es gar nicht zeigt. Darauf achten, welche Tonne es ist.</translation>
    </message>
    <message>
        <source>For practice: an invented machine</source>
        <translation>Zur Übung: eine erfundene Maschine</translation>
    </message>
    <message>
        <source>Its records say so; the simulated loader may stand in for it</source>
        <translation>Das steht in ihren Protokollen; der simulierte Radlader darf sie vertreten</translation>
    </message>
    <message>
        <source>Linkage</source>
        <translation>Kinematik</translation>
    </message>
    <message>
        <source>Its pins are on file: empty passes are enough to calibrate.</source>
        <translation>Die Bolzen sind hinterlegt: zum Kalibrieren genügen Leerdurchgänge.</translation>
    </message>
    <message>
        <source>Its pins are not known. It can be calibrated with a known mass all the same.</source>
        <translation>Die Bolzen sind nicht bekannt. Kalibrieren ist trotzdem möglich, mit einer bekannten Masse.</translation>
    </message>
    <message>
        <source>Read the pins from a file</source>
        <translation>Bolzen aus einer Datei lesen</translation>
    </message>
    <message>
        <source>Unit or job files (%1)</source>
        <translation>Geräte- oder Auftragsdateien (%1)</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
</context>
<context>
    <name>UnitPage</name>
    <message>
        <source>With %1</source>
        <translation>Mit %1</translation>
    </message>
    <message>
        <source>Due again %1</source>
        <translation>Wieder fällig: %1</translation>
    </message>
    <message>
        <source>Save its label as a PDF</source>
        <translation>Aufkleber als PDF speichern</translation>
    </message>
    <message>
        <source>Begin a job</source>
        <translation>Auftrag beginnen</translation>
    </message>
    <message>
        <source>Edit the unit</source>
        <translation>Gerät bearbeiten</translation>
    </message>
    <message>
        <source>Attachments</source>
        <translation>Anbaugeräte</translation>
    </message>
    <message>
        <source>Compare check-out and return</source>
        <translation>Ausgabe und Rücknahme vergleichen</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Protokolle</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Noch keine.</translation>
    </message>
    <message>
        <source>not trusted</source>
        <translation>nicht vertrauens­würdig</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>berichtigt</translation>
    </message>
    <message>
        <source>Its zero and span over the months</source>
        <translation>Ihr Nullpunkt und ihre Spanne über die Monate</translation>
    </message>
    <message>
        <source>Stops: what to set</source>
        <translation>Haltepunkte: was einzustellen ist</translation>
    </message>
    <message>
        <source>A disputed load: what was it worth?</source>
        <translation>Strittige Ladung: was war sie wert?</translation>
    </message>
    <message>
        <source>Something happened to it</source>
        <translation>Es ist etwas geschehen</translation>
    </message>
    <message>
        <source>Repaired, welded, overloaded, battery lost: the scale is due again</source>
        <translation>Repariert, geschweißt, überlastet, Batterie leer: die Waage ist wieder fällig</translation>
    </message>
    <message>
        <source>How its proofs are judged</source>
        <translation>Wonach seine Prüfungen beurteilt werden</translation>
    </message>
    <message>
        <source>Survey its linkage</source>
        <translation>Seine Kinematik vermessen</translation>
    </message>
    <message>
        <source>Its pins are not on file: a tape and an inclinometer find them, and its scale weighs more surely</source>
        <translation>Seine Bolzen sind nicht hinterlegt: Bandmaß und Neigungsmesser finden sie, und die Waage wiegt sicherer</translation>
    </message>
</context>
<context>
    <name>UnlockPage</name>
    <message>
        <source>Demo yard: who are you?</source>
        <translation>Demo-Betriebshof: wer ist am Telefon?</translation>
    </message>
    <message>
        <source>Who is at the phone?</source>
        <translation>Wer ist am Telefon?</translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation>Passphrase</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>Another yard</source>
        <translation>Anderer Betriebshof</translation>
    </message>
    <message>
        <source>All of them are invented. Choose whom you want to be.</source>
        <translation>Alle sind erfunden. Auswählen, wer man sein will.</translation>
    </message>
    <message>
        <source>Choose your name.</source>
        <translation>Den eigenen Namen auswählen.</translation>
    </message>
</context>
<context>
    <name>WaitStep</name>
    <message>
        <source>Compute again</source>
        <translation>Neu berechnen</translation>
    </message>
</context>
<context>
    <name>ZoneStep</name>
    <message>
        <source>Hold: the zone is clear</source>
        <translation>Halten: Gefahren­bereich frei</translation>
    </message>
    <message>
        <source>The machine moves next. Nobody near it, nobody under the boom, everybody in sight.</source>
        <translation>Als Nächstes bewegt sich die Maschine. Niemand in ihrer Nähe, niemand unter dem Hubgerüst, alle in Sicht.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile</name>
    <message>
        <source>read</source>
        <translation>gelesen</translation>
    </message>
    <message>
        <source>zone clear</source>
        <translation>Gefahren­bereich frei</translation>
    </message>
    <message>
        <source>gone back to do it again</source>
        <translation>zurückgegangen, um es zu wiederholen</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>done</source>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>did not work</source>
        <translation>fehlgeschlagen</translation>
    </message>
    <message>
        <source>photo or file kept</source>
        <translation>Foto oder Datei abgelegt</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>unterschrieben</translation>
    </message>
    <message>
        <source>not there to sign</source>
        <translation>abwesend</translation>
    </message>
    <message>
        <source>refused to sign</source>
        <translation>verweigert</translation>
    </message>
    <message>
        <source>nobody there to confirm</source>
        <translation>niemand da zum Bestätigen</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::App</name>
    <message>
        <source>Technician</source>
        <translation>Techniker</translation>
    </message>
    <message>
        <source>Operator</source>
        <translation>Bediener</translation>
    </message>
    <message>
        <source>Supervisor</source>
        <translation>Vorgesetzter</translation>
    </message>
    <message>
        <source>Safety lead</source>
        <translation>Sicherheits­verantwort­licher</translation>
    </message>
    <message>
        <source>Yard checker</source>
        <translation>Hofkontrolleur</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>DANGER</source>
        <translation>GEFAHR</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>WARNUNG</translation>
    </message>
    <message>
        <source>CAUTION</source>
        <translation>VORSICHT</translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation>HINWEIS</translation>
    </message>
    <message>
        <source>Last time the app ended in a fault of its own. What was answered is kept: a job opens where it was. Under Settings you can save the log for whoever looks into it.</source>
        <translation>Beim letzten Mal endete die App durch einen eigenen Fehler. Was beantwortet war, ist erhalten: ein Auftrag öffnet sich dort, wo er war. Unter Einstellungen können Sie das Protokoll für die sichern, die dem nachgehen.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Joiner</name>
    <message>
        <source>You are let in. The yard&apos;s lists did not fit in the code: they come with the next exchange, or as a file. Until then you can&apos;t sign on this phone.</source>
        <translation>Sie sind aufgenommen. Die Listen des Betriebshofs passten nicht in den Code: Sie kommen mit dem nächsten Austausch oder als Datei. Bis dahin können Sie auf diesem Telefon nicht unter­schreiben.</translation>
    </message>
    <message>
        <source>The yard&apos;s key is not on this phone. Let people in on the phone on which the yard was made.</source>
        <translation>Der Schlüssel des Betriebshofs ist nicht auf diesem Telefon. Nehmen Sie Leute auf dem Telefon auf, auf dem der Betriebshof gemacht wurde.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Level</name>
    <message>
        <source>%1 ± %2</source>
        <translation>%1 ± %2</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Live</name>
    <message>
        <source>%1 can&apos;t be opened: %2</source>
        <translation>%1 kann nicht geöffnet werden: %2</translation>
    </message>
    <message>
        <source>The simulated loader is for practice units only.</source>
        <translation>Der simulierte Lader ist nur für Übungsmaschinen.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Photos</name>
    <message>
        <source>Practice picture, invented</source>
        <translation>Übungsbild, erfunden</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Profiles</name>
    <message>
        <source>This file holds no linkage. A unit&apos;s profile, a calibration job, or the linkage alone is needed.</source>
        <translation>Diese Datei enthält keine Kinematik. Nötig ist das Profil eines Geräts, ein Kalibrier­auftrag oder die Kinematik allein.</translation>
    </message>
    <message>
        <source>Mass on the scale</source>
        <translation>Masse auf der Waage</translation>
    </message>
    <message>
        <source>Boom angle</source>
        <translation>Winkel des Hubgerüsts</translation>
    </message>
    <message>
        <source>Boom sensor</source>
        <translation>Hubgerüstsensor</translation>
    </message>
    <message>
        <source>Bucket sensor</source>
        <translation>Schaufelsensor</translation>
    </message>
    <message>
        <source>Lift pressure, head side</source>
        <translation>Hubdruck, Kolbenseite</translation>
    </message>
    <message>
        <source>Lift pressure, rod side</source>
        <translation>Hubdruck, Stangenseite</translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation>Öltemperatur</translation>
    </message>
    <message>
        <source>Operating hours</source>
        <translation>Betriebsstunden</translation>
    </message>
    <message>
        <source>Fuel level</source>
        <translation>Kraftstoffstand</translation>
    </message>
    <message>
        <source>counts</source>
        <translation>Zählwerte</translation>
    </message>
    <message>
        <source>Choose a class.</source>
        <translation>Eine Klasse auswählen.</translation>
    </message>
    <message>
        <source>Type a number from 50 to 99.99.</source>
        <translation>Eine Zahl von 50 bis 99,99 eingeben.</translation>
    </message>
    <message>
        <source>Type a number.</source>
        <translation>Eine Zahl eingeben.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Syncer</name>
    <message>
        <source>You begin each exchange yourself.</source>
        <translation>Sie beginnen jeden Austausch selbst.</translation>
    </message>
    <message>
        <source>No network now.</source>
        <translation>Jetzt kein Netz.</translation>
    </message>
    <message>
        <source>This network is paid for by what it carries.</source>
        <translation>Dieses Netz wird nach Datenmenge bezahlt.</translation>
    </message>
    <message>
        <source>Record or signature</source>
        <translation>Protokoll oder Unterschrift</translation>
    </message>
    <message>
        <source>List of who may sign</source>
        <translation>Liste der Unterschrifts­berechtigten</translation>
    </message>
    <message>
        <source>Photo, log or other evidence</source>
        <translation>Foto, Aufzeichnung oder anderer Nachweis</translation>
    </message>
    <message>
        <source>A person&apos;s name or photo</source>
        <translation>Name oder Foto einer Person</translation>
    </message>
    <message>
        <source>%1 of %2 parcels sent, %3 received; %4 records new here; evidence: %5 sent, %6 received</source>
        <translation>%1 von %2 Paketen gesendet, %3 empfangen; %4 Protokolle neu hier; Nachweise: %5 gesendet, %6 empfangen</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Yard</name>
    <message>
        <source>on their own phone</source>
        <translation>am eigenen Telefon</translation>
    </message>
</context>
</TS>
