<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="fr">
<context>
    <name>AdmitPage</name>
    <message>
        <source>Add somebody</source>
        <translation>Admettre quelqu’un</translation>
    </message>
    <message>
        <source>On their own phone they press &quot;Join a yard&quot; at the first start. Hold this phone over the code that it then shows.</source>
        <translation>Sur son propre téléphone, la personne appuie sur « Rejoindre un parc » au premier démarrage. Tenez ce téléphone au-dessus du code qu’il affiche alors.</translation>
    </message>
    <message>
        <source>A key on the list counts as that person&apos;s signature.</source>
        <translation>Une clé sur la liste vaut signature de cette personne.</translation>
    </message>
    <message>
        <source>Whoever holds it confirms in their name that a machine is safe. If it is somebody else, people can be hurt.</source>
        <translation>Qui la détient confirme en son nom qu’une machine est sûre. Si c’est quelqu’un d’autre, des personnes peuvent être blessées.</translation>
    </message>
    <message>
        <source>Let in only who stands before you. Compare name and key on both screens.</source>
        <translation>N’admettez que la personne qui est devant vous. Comparez le nom et la clé sur les deux écrans.</translation>
    </message>
    <message>
        <source>%1 is on the list. Let their phone read this code.</source>
        <translation>%1 est sur la liste. Laissez l’autre téléphone lire ce code.</translation>
    </message>
    <message>
        <source>Code that lets the other phone in</source>
        <translation>Code qui admet l’autre téléphone</translation>
    </message>
    <message>
        <source>The yard&apos;s lists do not fit in the code. Their phone can sign once it has them: with the next exchange, or as a file.</source>
        <translation>Les listes du parc ne tiennent pas dans le code. L’autre téléphone peut signer dès qu’il les a : avec le prochain échange, ou par un fichier.</translation>
    </message>
    <message>
        <source>Their key begins with %1</source>
        <translation>Sa clé commence par %1</translation>
    </message>
    <message>
        <source>Asked at %1 by the clock of that phone</source>
        <translation>Demandé à %1 selon l’horloge de ce téléphone-là</translation>
    </message>
    <message>
        <source>They sign as</source>
        <translation>Signe comme</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>La phrase secrète du parc</translation>
    </message>
    <message>
        <source>Let them in</source>
        <translation>Admettre</translation>
    </message>
    <message>
        <source>No, it is somebody else</source>
        <translation>Non, c’est quelqu’un d’autre</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>L’autre téléphone l’a lu</translation>
    </message>
</context>
<context>
    <name>AnswerPage</name>
    <message>
        <source>Confirm for another phone</source>
        <translation>Confirmer pour un autre téléphone</translation>
    </message>
    <message>
        <source>On the other phone somebody presses &quot;Ask another phone&quot; at the step that you are to confirm. Hold this phone over its code.</source>
        <translation>Sur l’autre téléphone, quelqu’un appuie sur « Demander à un autre téléphone » à l’étape que vous devez confirmer. Tenez ce téléphone au-dessus de son code.</translation>
    </message>
    <message>
        <source>Others go to work by what you confirm.</source>
        <translation>D’autres vont au travail d’après ce que vous confirmez.</translation>
    </message>
    <message>
        <source>If it is not so, the machine can start or the boom can come down on them.</source>
        <translation>Si ce n’est pas le cas, la machine peut démarrer ou le bras peut descendre sur eux.</translation>
    </message>
    <message>
        <source>Go to the machine and look for yourself. Confirm only what you have seen. Local rules and the maker&apos;s manual come first.</source>
        <translation>Allez à la machine et regardez vous-même. Ne confirmez que ce que vous avez vu. Les règles locales et le manuel du constructeur passent avant.</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 avec %2</translation>
    </message>
    <message>
        <source>%1 asks, at %2 by the clock of that phone</source>
        <translation>%1 demande, à %2 selon l’horloge de ce téléphone</translation>
    </message>
    <message>
        <source>Said there just before:</source>
        <translation>Dit là-bas juste avant :</translation>
    </message>
    <message>
        <source>You can&apos;t answer this. It is for: %1</source>
        <translation>Vous ne pouvez pas y répondre. La question s’adresse à : %1</translation>
    </message>
    <message>
        <source>Your answer: yes. Let the other phone read this code.</source>
        <translation>Votre réponse : oui. Faites lire ce code à l’autre téléphone.</translation>
    </message>
    <message>
        <source>Your answer: no. Let the other phone read this code.</source>
        <translation>Votre réponse : non. Faites lire ce code à l’autre téléphone.</translation>
    </message>
    <message>
        <source>Code of your answer</source>
        <translation>Code de votre réponse</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Je confirme</translation>
    </message>
    <message>
        <source>Sealed with your key: %1</source>
        <translation>Scellé avec votre clé : %1</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>Non, ce n’est pas le cas</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>L’autre téléphone l’a lu</translation>
    </message>
</context>
<context>
    <name>AskPage</name>
    <message>
        <source>Ask another phone</source>
        <translation>Demander à un autre téléphone</translation>
    </message>
    <message>
        <source>1. The second person opens &quot;Confirm for another phone&quot; on the first page of their own phone and reads this code. It holds for 15 minutes.</source>
        <translation>1. La seconde personne ouvre « Confirmer pour un autre téléphone » sur la première page de son propre téléphone et lit ce code. Il vaut 15 minutes.</translation>
    </message>
    <message>
        <source>Code that asks for the confirmation</source>
        <translation>Code qui demande la confirmation</translation>
    </message>
    <message>
        <source>2. They look for themself and answer. Then read the code that their phone shows.</source>
        <translation>2. Elle regarde elle-même et répond. Lisez ensuite le code qu’affiche son téléphone.</translation>
    </message>
    <message>
        <source>Hold this phone over the other one, so that the whole code of the answer is in the picture.</source>
        <translation>Tenez ce téléphone au-dessus de l’autre, de sorte que tout le code de la réponse soit dans l’image.</translation>
    </message>
    <message>
        <source>Read their answer</source>
        <translation>Lire sa réponse</translation>
    </message>
    <message>
        <source>Ask again with a new code</source>
        <translation>Redemander avec un nouveau code</translation>
    </message>
</context>
<context>
    <name>AttachmentEditPage</name>
    <message>
        <source>Number or name of the attachment</source>
        <translation>Numéro ou nom de l’accessoire</translation>
    </message>
    <message>
        <source>Quick coupler, kg</source>
        <translation>Attache rapide, kg</translation>
    </message>
    <message>
        <source>Bucket, kg</source>
        <translation>Godet, kg</translation>
    </message>
    <message>
        <source>Load&apos;s centre along the bucket floor from the hinge pin, mm</source>
        <translation>Centre de la charge le long du fond du godet, depuis l’axe du godet, mm</translation>
    </message>
    <message>
        <source>Load&apos;s centre square to the floor, mm</source>
        <translation>Centre de la charge perpendiculairement au fond, mm</translation>
    </message>
    <message>
        <source>Heel along the floor, mm</source>
        <translation>Talon le long du fond, mm</translation>
    </message>
    <message>
        <source>Heel square to the floor, mm</source>
        <translation>Talon perpendiculairement au fond, mm</translation>
    </message>
    <message>
        <source>Cutting edge along the floor, mm</source>
        <translation>Lame le long du fond, mm</translation>
    </message>
    <message>
        <source>Cutting edge square to the floor, mm</source>
        <translation>Lame perpendiculairement au fond, mm</translation>
    </message>
    <message>
        <source>Upper stop: cutting edge above ground, mm</source>
        <translation>Arrêt haut&#xa0;: lame au-dessus du sol, mm</translation>
    </message>
    <message>
        <source>Lower stop: cutting edge above ground, mm</source>
        <translation>Arrêt bas&#xa0;: lame au-dessus du sol, mm</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>Modifier %1</translation>
    </message>
    <message>
        <source>New attachment</source>
        <translation>Nouvel accessoire</translation>
    </message>
    <message>
        <source>What is not known stays empty. Without masses and a load centre a known mass is needed to calibrate.</source>
        <translation>Ce qui n’est pas connu reste vide. Sans les masses ni le centre de la charge, il faut une masse connue pour étalonner.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Enregistrer</translation>
    </message>
</context>
<context>
    <name>AttachmentsPage</name>
    <message>
        <source>Attachments</source>
        <translation>Accessoires</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Aucun pour l’instant.</translation>
    </message>
    <message>
        <source>Add an attachment</source>
        <translation>Ajouter un accessoire</translation>
    </message>
</context>
<context>
    <name>BeginPage</name>
    <message>
        <source>Begin a job on %1</source>
        <translation>Commencer une intervention sur %1</translation>
    </message>
    <message>
        <source>Must have been done before: %1</source>
        <translation>À avoir fait avant&#xa0;: %1</translation>
    </message>
    <message>
        <source>Have at hand: %1</source>
        <translation>À avoir sous la main&#xa0;: %1</translation>
    </message>
    <message>
        <source>Way</source>
        <translation>Variante</translation>
    </message>
    <message>
        <source>Fitted attachment</source>
        <translation>Accessoire monté</translation>
    </message>
    <message>
        <source>If nobody is here to confirm what a second person should</source>
        <translation>Si personne n’est là pour confirmer ce qu’une seconde personne doit confirmer</translation>
    </message>
    <message>
        <source>Wait for somebody</source>
        <translation>Attendre quelqu’un</translation>
    </message>
    <message>
        <source>A look from afar, by photo</source>
        <translation>Regard de loin, sur photo</translation>
    </message>
    <message>
        <source>Go on, marked as unconfirmed</source>
        <translation>Continuer, marqué non confirmé</translation>
    </message>
    <message>
        <source>(empty where the attachment says it)</source>
        <translation>(vide si l’accessoire l’indique)</translation>
    </message>
    <message>
        <source>Rated payload</source>
        <translation>Charge utile nominale</translation>
    </message>
    <message>
        <source>Wanted upper stop, cutting edge above ground</source>
        <translation>Arrêt haut voulu, lame au-dessus du sol</translation>
    </message>
    <message>
        <source>Test mass</source>
        <translation>Masse d’essai</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Commencer</translation>
    </message>
    <message>
        <source>Another procedure</source>
        <translation>Autre procédure</translation>
    </message>
    <message>
        <source>What is to be done?</source>
        <translation>Que faut-il faire&#xa0;?</translation>
    </message>
</context>
<context>
    <name>BrokenPage</name>
    <message>
        <source>The yard can&apos;t be opened</source>
        <translation>Impossible d’ouvrir le parc</translation>
    </message>
    <message>
        <source>Nothing was changed. Keep the folder as it is, and restore a backup beside it if you have one.</source>
        <translation>Rien n’a été changé. Garder le dossier tel quel et restaurer une sauvegarde à côté, s’il y en a une.</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Réessayer</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Ouvrir un autre parc</translation>
    </message>
</context>
<context>
    <name>CameraView</name>
    <message>
        <source>Release the shutter</source>
        <translation>Déclencher la photo</translation>
    </message>
</context>
<context>
    <name>CautionStep</name>
    <message>
        <source>I have read this</source>
        <translation>J’ai lu ceci</translation>
    </message>
</context>
<context>
    <name>CertificatePage</name>
    <message>
        <source>Calibration certificate</source>
        <translation>Certificat d’étalonnage</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Langue</translation>
    </message>
    <message>
        <source>What you state here is not part of the sealed record, and the certificate says so. It may stay empty.</source>
        <translation>Ce que vous indiquez ici ne fait pas partie de l’enregistrement scellé, et le certificat le dit. Cela peut rester vide.</translation>
    </message>
    <message>
        <source>Calibrated by: name and address</source>
        <translation>Étalonné par : nom et adresse</translation>
    </message>
    <message>
        <source>For whom: name and address</source>
        <translation>Pour qui : nom et adresse</translation>
    </message>
    <message>
        <source>Where it was done</source>
        <translation>Où cela a été fait</translation>
    </message>
    <message>
        <source>Country: two capital letters</source>
        <translation>Pays : deux lettres majuscules</translation>
    </message>
    <message>
        <source>Two capital letters (ISO 3166-1), as in DE</source>
        <translation>Deux lettres majuscules (ISO 3166-1), comme DE</translation>
    </message>
    <message>
        <source>Certificates of the test masses or of the truck scale</source>
        <translation>Certificats des masses d’essai ou du pont-bascule</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>Enregistrer en PDF</translation>
    </message>
    <message>
        <source>Save as a web page</source>
        <translation>Enregistrer comme page web</translation>
    </message>
    <message>
        <source>One HTML file that needs nothing beside it</source>
        <translation>Un fichier HTML qui n’a besoin de rien d’autre</translation>
    </message>
    <message>
        <source>Save for programs</source>
        <translation>Enregistrer pour des programmes</translation>
    </message>
    <message>
        <source>A Digital Calibration Certificate (DCC, XML)</source>
        <translation>Un certificat d’étalonnage numérique (DCC, XML)</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Enregistré&#xa0;: %1</translation>
    </message>
</context>
<context>
    <name>ChartsPage</name>
    <message>
        <source>Charts</source>
        <translation>Graphiques</translation>
    </message>
    <message>
        <source>Nothing was logged or proved that a chart could show.</source>
        <translation>Rien n’a été enregistré ni contrôlé qu’un graphique puisse montrer.</translation>
    </message>
</context>
<context>
    <name>ComparePage</name>
    <message>
        <source>Check-out and return compared</source>
        <translation>Départ et retour comparés</translation>
    </message>
    <message>
        <source>Nothing differs that was read or answered.</source>
        <translation>Aucune différence dans ce qui a été lu ou répondu.</translation>
    </message>
    <message>
        <source>The record of the check-out</source>
        <translation>Le procès-verbal de départ</translation>
    </message>
    <message>
        <source>The record of the return</source>
        <translation>Le procès-verbal de retour</translation>
    </message>
</context>
<context>
    <name>ConfirmStep</name>
    <message>
        <source>Yes</source>
        <translation>Oui</translation>
    </message>
    <message>
        <source>No</source>
        <translation>Non</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Je confirme</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>Non, ce n’est pas le cas</translation>
    </message>
    <message>
        <source>Nobody is here to confirm</source>
        <translation>Personne n’est là pour confirmer</translation>
    </message>
    <message>
        <source>The record will say so</source>
        <translation>Le procès-verbal le dira</translation>
    </message>
    <message>
        <source>A second person looks for themself and confirms: %1</source>
        <translation>Une seconde personne regarde elle-même et confirme&#xa0;: %1</translation>
    </message>
    <message>
        <source>Their passphrase</source>
        <translation>Sa phrase secrète</translation>
    </message>
    <message>
        <source>Ask another phone</source>
        <translation>Demander à un autre téléphone</translation>
    </message>
    <message>
        <source>By a code, from screen to camera; no network is needed</source>
        <translation>Par un code, de l’écran à la caméra ; aucun réseau n’est nécessaire</translation>
    </message>
    <message>
        <source>No such person has a key on this phone. Ask another phone, or add one under People.</source>
        <translation>Aucune personne de ce rôle n’a de clé sur ce téléphone. Demandez à un autre téléphone, ou ajoutez-en une sous Personnes.</translation>
    </message>
</context>
<context>
    <name>DisputePage</name>
    <message>
        <source>What was this scale worth?</source>
        <translation>Que valait ce système de pesage ?</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 avec %2</translation>
    </message>
    <message>
        <source>Day of the load, as 2026-05-04</source>
        <translation>Jour de la charge, comme 2026-05-04</translation>
    </message>
    <message>
        <source>Year, month and day, as 2026-05-04</source>
        <translation>Année, mois et jour, comme 2026-05-04</translation>
    </message>
    <message>
        <source>Tell</source>
        <translation>Dire</translation>
    </message>
    <message>
        <source>Save it with the records behind it</source>
        <translation>L’enregistrer avec les procès-verbaux à l’appui</translation>
    </message>
    <message>
        <source>A folder that any program for these records can verify</source>
        <translation>Un dossier que tout programme pour ces procès-verbaux peut vérifier</translation>
    </message>
</context>
<context>
    <name>DoubtStep</name>
    <message>
        <source>I meant %1</source>
        <translation>Je voulais dire %1</translation>
    </message>
    <message>
        <source>Type it again</source>
        <translation>Saisir à nouveau</translation>
    </message>
    <message>
        <source>It is %1</source>
        <translation>C’est bien %1</translation>
    </message>
    <message>
        <source>The record will say that it was doubted and confirmed</source>
        <translation>Le procès-verbal dira que la valeur a été mise en doute et confirmée</translation>
    </message>
    <message>
        <source>%1: can that be?</source>
        <translation>%1&#xa0;: est-ce possible&#xa0;?</translation>
    </message>
    <message>
        <source>Usual is between %1 and %2. Look for a slipped decimal mark or another unit.</source>
        <translation>D’habitude&#xa0;: entre %1 et %2. Chercher une virgule déplacée ou une autre unité.</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>Saisir %1 %2</translation>
    </message>
</context>
<context>
    <name>EndStep</name>
    <message>
        <source>Seal the record</source>
        <translation>Sceller le procès-verbal</translation>
    </message>
    <message>
        <source>Show the record</source>
        <translation>Voir le procès-verbal</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Terminé</translation>
    </message>
    <message>
        <source>Failed: do not use this scale</source>
        <translation>Échec&#xa0;: ne pas utiliser ce système de pesage</translation>
    </message>
    <message>
        <source>Given up: do not use this scale</source>
        <translation>Abandon&#xa0;: ne pas utiliser ce système de pesage</translation>
    </message>
    <message>
        <source>Sealed with your key. Nobody can change it without it showing.</source>
        <translation>Scellé avec votre clé. Personne ne peut le changer sans que cela se voie.</translation>
    </message>
    <message>
        <source>Record %1</source>
        <translation>Procès-verbal %1</translation>
    </message>
</context>
<context>
    <name>EventPage</name>
    <message>
        <source>What happened to %1?</source>
        <translation>Qu’est-il arrivé à %1 ?</translation>
    </message>
    <message>
        <source>It is sealed with your key as a record of its own. From then on the scale is due, until it is proved again.</source>
        <translation>C’est scellé avec votre clé comme un procès-verbal à part. Dès lors le système de pesage est à contrôler, jusqu’à son prochain contrôle.</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Ce qui est arrivé</translation>
    </message>
    <message>
        <source>With which attachment</source>
        <translation>Avec quel accessoire</translation>
    </message>
    <message>
        <source>With any of them</source>
        <translation>Avec n’importe lequel</translation>
    </message>
    <message>
        <source>In your words (may stay empty)</source>
        <translation>Dans vos mots (peut rester vide)</translation>
    </message>
    <message>
        <source>Seal it</source>
        <translation>Sceller</translation>
    </message>
</context>
<context>
    <name>EvidenceStep</name>
    <message>
        <source>Take a photo</source>
        <translation>Prendre une photo</translation>
    </message>
    <message>
        <source>Use a practice picture</source>
        <translation>Prendre une image d’exercice</translation>
    </message>
    <message>
        <source>Invented, and marked so</source>
        <translation>Fictive, et marquée comme telle</translation>
    </message>
    <message>
        <source>Choose a picture</source>
        <translation>Choisir une image</translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation>Choisir un fichier</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>Omettre</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Images (%1)</translation>
    </message>
    <message>
        <source>All files (%1)</source>
        <translation>Tous les fichiers (%1)</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>Le téléphone ne laisse pas l’application utiliser l’appareil photo. L’autoriser dans les réglages du téléphone, ou choisir une image.</translation>
    </message>
</context>
<context>
    <name>FeedPage</name>
    <message>
        <source>Live readings</source>
        <translation>Lectures en direct</translation>
    </message>
    <message>
        <source>Readings come as lines of a lift log (CSV): from a sensor gateway over the network, from a file that is played back, or from the simulated loader for practice.</source>
        <translation>Les lectures arrivent comme lignes d’un enregistrement de levage (CSV)&#xa0;: d’une passerelle de capteurs par le réseau, d’un fichier rejoué, ou de la chargeuse simulée pour s’exercer.</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Aucune</translation>
    </message>
    <message>
        <source>Simulated loader</source>
        <translation>Chargeuse simulée</translation>
    </message>
    <message>
        <source>Invented; for practice units</source>
        <translation>Fictive&#xa0;; pour les engins d’exercice</translation>
    </message>
    <message>
        <source>A file, played back</source>
        <translation>Un fichier rejoué</translation>
    </message>
    <message>
        <source>Sensor gateway (TCP)</source>
        <translation>Passerelle de capteurs (TCP)</translation>
    </message>
    <message>
        <source>Address of the gateway, host:port</source>
        <translation>Adresse de la passerelle, hôte:port</translation>
    </message>
    <message>
        <source>%1 readings a second</source>
        <translation>%1 lectures par seconde</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Enregistrements de levage (%1)</translation>
    </message>
    <message>
        <source>Practise what goes wrong</source>
        <translation>S’exercer à ce qui tourne mal</translation>
    </message>
    <message>
        <source>The simulated loader can misbehave, from its next movement on, as if it were so on the machine. What the job then says and asks for is part of the practice.</source>
        <translation>La chargeuse simulée peut mal se comporter dès son prochain mouvement, comme si la machine était ainsi. Ce que le travail dit et demande alors fait partie de l’exercice.</translation>
    </message>
    <message>
        <source>The loader misbehaves</source>
        <translation>La chargeuse se comporte mal</translation>
    </message>
    <message>
        <source>No, all is well</source>
        <translation>Non, tout va bien</translation>
    </message>
    <message>
        <source>All is well</source>
        <translation>Tout va bien</translation>
    </message>
    <message>
        <source>Cut the readings off for 10 seconds</source>
        <translation>Couper les lectures pendant 10 secondes</translation>
    </message>
    <message>
        <source>As when a plug comes off; they come back by themselves</source>
        <translation>Comme quand un connecteur se débranche ; elles reviennent d’elles-mêmes</translation>
    </message>
</context>
<context>
    <name>FirstStartPage</name>
    <message>
        <source>Calibrates the scale and the automatic stops of a wheel loader, step by step, with no signal needed, and keeps a signed record.</source>
        <translation>Étalonne le système de pesage et les arrêts automatiques d’une chargeuse sur pneus, étape par étape, sans réseau, et garde un procès-verbal signé.</translation>
    </message>
    <message>
        <source>The law and the rules of the site, the machine maker&apos;s manual and licensed practice come first.</source>
        <translation>La loi et les règles du site, le manuel du constructeur de la machine et la pratique des professionnels habilités passent avant.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Langue</translation>
    </message>
    <message>
        <source>Making the demo yard: %1 %</source>
        <translation>Création du parc de démonstration&#xa0;: %1&#xa0;%</translation>
    </message>
    <message>
        <source>Make my yard</source>
        <translation>Créer mon parc</translation>
    </message>
    <message>
        <source>Your key and the yard&apos;s list of who may sign</source>
        <translation>Votre clé et la liste des signataires du parc</translation>
    </message>
    <message>
        <source>Look round the demo yard</source>
        <translation>Visiter le parc de démonstration</translation>
    </message>
    <message>
        <source>Invented machines, people and records, to practise on</source>
        <translation>Machines, personnes et procès-verbaux fictifs, pour s’exercer</translation>
    </message>
    <message>
        <source>Join a yard</source>
        <translation>Rejoindre un parc</translation>
    </message>
    <message>
        <source>It is on another phone, whose owner lets you in</source>
        <translation>Il est sur un autre téléphone, dont le détenteur vous admet</translation>
    </message>
</context>
<context>
    <name>Flash</name>
    <message>
        <source>Once more</source>
        <translation>Encore une fois</translation>
    </message>
    <message>
        <source>Pass complete</source>
        <translation>Passe terminée</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>Pose tenue</translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
    <message>
        <source>Working</source>
        <translation>En cours</translation>
    </message>
</context>
<context>
    <name>HistoryChart</name>
    <message>
        <source>It may lie between %1 and %2.</source>
        <translation>Il peut se trouver entre %1 et %2.</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) from %1 to %2, between %3 and %4, the last %5.</source>
        <translation>
            <numerusform>%n lecture du %1 au %2, entre %3 et %4, la dernière %5.</numerusform>
            <numerusform>%n lectures du %1 au %2, entre %3 et %4, la dernière %5.</numerusform>
        </translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Mesuré</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Tolérance</translation>
    </message>
    <message>
        <source>Taught anew</source>
        <translation>Réappris</translation>
    </message>
</context>
<context>
    <name>HistoryPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 avec %2</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Aucun pour l’instant.</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Zéro</translation>
    </message>
    <message>
        <source>What it showed with an empty bucket, as found, in %1</source>
        <translation>Ce qu’elle affichait godet vide, en l’état trouvé, en %1</translation>
    </message>
    <message>
        <source>Span</source>
        <translation>Étendue</translation>
    </message>
    <message>
        <source>What it showed of a known mass less its zero, in % of that mass</source>
        <translation>Ce qu’elle affichait d’une masse connue moins son zéro, en % de cette masse</translation>
    </message>
    <message>
        <source>Errors of the proofs</source>
        <translation>Erreurs des contrôles</translation>
    </message>
    <message>
        <source>In % of the known mass</source>
        <translation>En % de la masse connue</translation>
    </message>
</context>
<context>
    <name>HoldStep</name>
    <message>
        <source>It was disturbed: begin again</source>
        <translation>Perturbé&#xa0;: recommencer</translation>
    </message>
    <message>
        <source>Begin: %1</source>
        <translation>Commencer&#xa0;: %1</translation>
    </message>
    <message numerus="yes">
        <source>%n second(s)</source>
        <translation>
            <numerusform>%n seconde</numerusform>
            <numerusform>%n secondes</numerusform>
        </translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Échec</translation>
    </message>
</context>
<context>
    <name>HomePage</name>
    <message>
        <source>Demo yard (invented)</source>
        <translation>Parc de démonstration (fictif)</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) must not be used</source>
        <translation>
            <numerusform>%n engin à ne pas utiliser</numerusform>
            <numerusform>%n engins à ne pas utiliser</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) due now or soon</source>
        <translation>
            <numerusform>%n engin à échéance ou bientôt</numerusform>
            <numerusform>%n engins à échéance ou bientôt</numerusform>
        </translation>
    </message>
    <message>
        <source>Waiting for a second person</source>
        <translation>En attente d’une seconde personne</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>Rien en attente.</translation>
    </message>
    <message>
        <source>%1, since %2</source>
        <translation>%1, depuis&#xa0;: %2</translation>
    </message>
    <message>
        <source>Confirmed lately</source>
        <translation>Confirmé récemment</translation>
    </message>
    <message>
        <source>Out on hire</source>
        <translation>En location</translation>
    </message>
    <message>
        <source>No unit is out.</source>
        <translation>Aucun engin n’est sorti.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>depuis&#xa0;: %1</translation>
    </message>
    <message>
        <source>Go on with</source>
        <translation>À poursuivre</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Engins</translation>
    </message>
    <message>
        <source>No unit yet. Add the first one below.</source>
        <translation>Aucun engin pour l’instant. Ajouter le premier ci-dessous.</translation>
    </message>
    <message>
        <source>locked out</source>
        <translation>consigné</translation>
    </message>
    <message>
        <source>Add a unit</source>
        <translation>Ajouter un engin</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Réglages</translation>
    </message>
    <message>
        <source>Confirm for another phone</source>
        <translation>Confirmer pour un autre téléphone</translation>
    </message>
    <message>
        <source>Reads the code by which it asks</source>
        <translation>Lit le code par lequel il demande</translation>
    </message>
</context>
<context>
    <name>JobMorePage</name>
    <message>
        <source>This job</source>
        <translation>Cette intervention</translation>
    </message>
    <message>
        <source>Go on later</source>
        <translation>Continuer plus tard</translation>
    </message>
    <message>
        <source>Nothing is lost; it opens again at this step</source>
        <translation>Rien n’est perdu&#xa0;; elle se rouvre à cette étape</translation>
    </message>
    <message>
        <source>Give the job up</source>
        <translation>Abandonner l’intervention</translation>
    </message>
    <message>
        <source>The job then ends as given up: the machine is made safe, and its scale is tagged not to be used.</source>
        <translation>L’intervention se termine alors comme abandonnée&#xa0;: la machine est mise en sécurité et son système de pesage reçoit une étiquette «&#xa0;ne pas utiliser&#xa0;».</translation>
    </message>
    <message>
        <source>Hold to give up</source>
        <translation>Maintenir pour abandonner</translation>
    </message>
    <message>
        <source>Keep on working</source>
        <translation>Continuer le travail</translation>
    </message>
    <message>
        <source>Done so far, the newest first</source>
        <translation>Fait jusqu’ici, le plus récent d’abord</translation>
    </message>
    <message>
        <source>(does not count)</source>
        <translation>(ne compte pas)</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Lectures en direct</translation>
    </message>
    <message>
        <source>None are open</source>
        <translation>Aucune n’est ouverte</translation>
    </message>
    <message>
        <source>They are coming</source>
        <translation>Elles arrivent</translation>
    </message>
    <message>
        <source>They have stopped</source>
        <translation>Elles se sont arrêtées</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Graphiques</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Passes, ce que l’ajustement laisse, erreurs du contrôle</translation>
    </message>
</context>
<context>
    <name>JobPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 avec %2</translation>
    </message>
    <message>
        <source>practice, invented</source>
        <translation>exercice, fictif</translation>
    </message>
    <message>
        <source>Step %1 of %2</source>
        <translation>Étape %1 sur %2</translation>
    </message>
    <message>
        <source>The job has stopped. Make the machine safe first.</source>
        <translation>L’intervention s’est arrêtée. Mettre d’abord la machine en sécurité.</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>Non réussi</translation>
    </message>
    <message>
        <source>It was: %1</source>
        <translation>C’était&#xa0;: %1</translation>
    </message>
    <message>
        <source>Do this now:</source>
        <translation>À faire maintenant&#xa0;:</translation>
    </message>
    <message>
        <source>Do the last step again</source>
        <translation>Refaire la dernière étape</translation>
    </message>
    <message>
        <source>What was said stays on the record and no longer counts</source>
        <translation>Ce qui a été dit reste au procès-verbal et ne compte plus</translation>
    </message>
    <message>
        <source>All that was done so far, giving up, going on later</source>
        <translation>Tout ce qui a été fait, abandonner, continuer plus tard</translation>
    </message>
    <message>
        <source>What the survey found</source>
        <translation>Ce que le relevé a trouvé</translation>
    </message>
</context>
<context>
    <name>JoinPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Rejoindre un parc</translation>
    </message>
    <message>
        <source>The yard is on another phone. This one makes a key of your own, and asks that phone to let you in.</source>
        <translation>Le parc est sur un autre téléphone. Celui-ci crée une clé à vous et demande à l’autre de vous admettre.</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Votre nom</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Phrase secrète&#xa0;: 12 caractères ou plus, de préférence plusieurs mots</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>La même phrase secrète encore une fois</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>Ce n’est pas la même.</translation>
    </message>
    <message>
        <source>It locks your signing key on this phone. Nobody can recover it: if it is lost, you join again with a new key.</source>
        <translation>Elle verrouille votre clé de signature sur ce téléphone. Personne ne peut la récupérer : si elle est perdue, rejoignez de nouveau le parc avec une nouvelle clé.</translation>
    </message>
    <message>
        <source>Make my key</source>
        <translation>Créer ma clé</translation>
    </message>
</context>
<context>
    <name>JoiningPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Rejoindre un parc</translation>
    </message>
    <message>
        <source>Code that asks to be let in</source>
        <translation>Code qui demande à être admis</translation>
    </message>
    <message>
        <source>Your key begins with %1</source>
        <translation>Votre clé commence par %1</translation>
    </message>
    <message>
        <source>1. On the phone that has the yard&apos;s key, open Settings, People, &quot;Add somebody on their own phone&quot;, and read this code. It holds for a day.</source>
        <translation>1. Sur le téléphone qui a la clé du parc, ouvrez Réglages, Personnes, « Admettre quelqu’un sur son propre téléphone », et lisez ce code. Il vaut un jour.</translation>
    </message>
    <message>
        <source>2. Compare on both screens how the key begins. Then read the code that the other phone shows.</source>
        <translation>2. Comparez sur les deux écrans le début de la clé. Lisez ensuite le code que l’autre téléphone affiche.</translation>
    </message>
    <message>
        <source>Hold this phone over the yard&apos;s phone, so that the whole code is in the picture.</source>
        <translation>Tenez ce téléphone au-dessus de celui du parc, de sorte que tout le code soit dans l’image.</translation>
    </message>
    <message>
        <source>Your passphrase, to make a new code</source>
        <translation>Votre phrase secrète, pour faire un nouveau code</translation>
    </message>
    <message>
        <source>Make a new code</source>
        <translation>Faire un nouveau code</translation>
    </message>
    <message>
        <source>Make a yard of my own instead</source>
        <translation>Créer plutôt mon propre parc</translation>
    </message>
    <message>
        <source>The key that was made here is then removed. If it has been let in already, have it revoked.</source>
        <translation>La clé créée ici est alors supprimée. Si elle a déjà été admise, la faire révoquer.</translation>
    </message>
    <message>
        <source>Hold to remove the key</source>
        <translation>Maintenir pour supprimer la clé</translation>
    </message>
    <message>
        <source>Keep the key</source>
        <translation>Garder la clé</translation>
    </message>
    <message>
        <source>Read the yard&apos;s code</source>
        <translation>Lire le code du parc</translation>
    </message>
    <message>
        <source>Make the code</source>
        <translation>Faire le code</translation>
    </message>
    <message>
        <source>Show my code again</source>
        <translation>Afficher de nouveau mon code</translation>
    </message>
</context>
<context>
    <name>Keypad</name>
    <message>
        <source>Delete the last digit</source>
        <translation>Effacer le dernier chiffre</translation>
    </message>
    <message>
        <source>Plus or minus</source>
        <translation>Plus ou moins</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Virgule décimale</translation>
    </message>
</context>
<context>
    <name>KeysLostPage</name>
    <message>
        <source>The keys are not on this phone</source>
        <translation>Les clés ne sont pas sur ce téléphone</translation>
    </message>
    <message>
        <source>Units, jobs and records of the yard are here, but no key to sign with. So it is after a phone was restored from a backup: backups hold no keys, so that nobody else can sign with yours.</source>
        <translation>Les engins, travaux et procès-verbaux du parc sont ici, mais aucune clé pour signer. C’est ainsi après la restauration d’un téléphone : les sauvegardes ne contiennent pas de clés, pour que personne d’autre ne signe avec les vôtres.</translation>
    </message>
    <message>
        <source>Nothing is lost: what was signed stays signed, and can be checked. With new keys you go on. The yard&apos;s list of who may sign then begins anew, with all who were on it, and other phones of the yard must accept it.</source>
        <translation>Rien n’est perdu : ce qui a été signé reste signé et vérifiable. Avec de nouvelles clés, on continue. La liste des signataires du parc recommence alors, avec tous ceux qui y figuraient, et les autres téléphones du parc doivent l’accepter.</translation>
    </message>
    <message>
        <source>If the old phone was lost or stolen, its key can still sign. Have it revoked.</source>
        <translation>Si l’ancien téléphone est perdu ou volé, sa clé peut encore signer. La faire révoquer.</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Créer de nouvelles clés</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Ouvrir un autre parc</translation>
    </message>
</context>
<context>
    <name>LevelPage</name>
    <message>
        <source>The phone as a level</source>
        <translation>Le téléphone comme niveau</translation>
    </message>
    <message>
        <source>A raised boom can come down.</source>
        <translation>Un bras levé peut retomber.</translation>
    </message>
    <message>
        <source>Whoever is under it is crushed.</source>
        <translation>Quiconque est dessous est écrasé.</translation>
    </message>
    <message>
        <source>Measure on a raised boom only with the engine off, the key removed, the boom support fitted, and nobody under it.</source>
        <translation>Ne mesurer sur un bras levé que moteur arrêté, clé retirée, support du bras en place, et personne dessous.</translation>
    </message>
    <message>
        <source>This phone has no accelerometer. Use an inclinometer and type what it shows.</source>
        <translation>Ce téléphone n’a pas d’accéléromètre. Prendre un inclinomètre et saisir ce qu’il affiche.</translation>
    </message>
    <message>
        <source>Slope along the phone&apos;s long side, as it lay first:</source>
        <translation>Pente selon le long côté du téléphone, tel que posé d’abord&#xa0;:</translation>
    </message>
    <message>
        <source>2. Turn the phone half round on the same spot, its top where its foot was. Hands off, then measure again.</source>
        <translation>2. Tourner le téléphone d’un demi-tour au même endroit, le haut là où était le bas. Le lâcher, puis mesurer à nouveau.</translation>
    </message>
    <message>
        <source>1. Lay the phone flat on the bucket floor, the boom or the ground, its long side along the machine. Hands off, then measure.</source>
        <translation>1. Poser le téléphone à plat sur le fond du godet, le bras ou le sol, long côté dans le sens de la machine. Le lâcher, puis mesurer.</translation>
    </message>
    <message>
        <source>Measuring: keep your hands off</source>
        <translation>Mesure en cours&#xa0;: ne pas toucher</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Mesurer</translation>
    </message>
    <message>
        <source>Begin again</source>
        <translation>Recommencer</translation>
    </message>
</context>
<context>
    <name>LiftChart</name>
    <message>
        <source>%1: %2 to %3 %4, from %5° to %6°.</source>
        <translation>%1 : de %2 à %3 %4, de %5° à %6°.</translation>
    </message>
    <message>
        <source>Fitted tare: %1 to %2 %3, known to ± %4 %3 (95 %).</source>
        <translation>Tare ajustée : de %1 à %2 %3, connue à ± %4 %3 près (95 %).</translation>
    </message>
    <message>
        <source>Lift pressure</source>
        <translation>Pression de levage</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom&apos;s angle</source>
        <translation>Pression en %1, selon l’angle du bras</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom sensor&apos;s reading</source>
        <translation>Pression en %1, selon la lecture du capteur du bras</translation>
    </message>
    <message>
        <source>Chart of the lift pressure.</source>
        <translation>Graphique de la pression de levage.</translation>
    </message>
    <message>
        <source>This pass</source>
        <translation>Cette passe</translation>
    </message>
    <message>
        <source>Fitted tare</source>
        <translation>Tare ajustée</translation>
    </message>
    <message>
        <source>Where it lies with 95 % probability</source>
        <translation>Où elle se trouve à 95 % de probabilité</translation>
    </message>
</context>
<context>
    <name>LiveBar</name>
    <message>
        <source>No readings are coming. They are waited for.</source>
        <translation>Aucune lecture n’arrive. En attente de lectures.</translation>
    </message>
    <message>
        <source>Boom rising</source>
        <translation>Le bras monte</translation>
    </message>
    <message>
        <source>Boom lowering</source>
        <translation>Le bras descend</translation>
    </message>
    <message>
        <source>Standing still</source>
        <translation>Immobile</translation>
    </message>
    <message>
        <source>Boom %1°</source>
        <translation>Bras %1°</translation>
    </message>
    <message>
        <source>wanted %1°</source>
        <translation>voulu %1°</translation>
    </message>
    <message>
        <source>%1 % done</source>
        <translation>%1&#xa0;% fait</translation>
    </message>
    <message>
        <source>Practice: %1 It stays so until you say under Live readings that all is well, as if it had been mended.</source>
        <translation>Exercice : %1 Cela reste ainsi jusqu’à ce que vous disiez sous « Lectures en direct » que tout va bien, comme si c’était réparé.</translation>
    </message>
</context>
<context>
    <name>MachineView</name>
    <message>
        <source>Side view of the loader. Measure from A to B: %1</source>
        <translation>Vue de côté de la chargeuse. Mesurer de A à B : %1</translation>
    </message>
    <message>
        <source>Side view of the loader, boom at %1 degrees</source>
        <translation>Vue de côté de la chargeuse, bras à %1 degrés</translation>
    </message>
    <message>
        <source>Side view of the loader</source>
        <translation>Vue de côté de la chargeuse</translation>
    </message>
    <message>
        <source>%1 degrees wanted</source>
        <translation>%1 degrés voulus</translation>
    </message>
    <message>
        <source>plausible, not its own pins</source>
        <translation>axes plausibles, pas les siens</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Press to close this message</source>
        <translation>Appuyer pour fermer ce message</translation>
    </message>
</context>
<context>
    <name>MakeYardPage</name>
    <message>
        <source>Make my yard</source>
        <translation>Créer mon parc</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Votre nom</translation>
    </message>
    <message>
        <source>You are mostly</source>
        <translation>Votre rôle principal</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Phrase secrète&#xa0;: 12 caractères ou plus, de préférence plusieurs mots</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>La même phrase secrète encore une fois</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>Ce n’est pas la même.</translation>
    </message>
    <message>
        <source>It locks your signing key and the yard&apos;s key on this phone. Nobody can recover it: write it down and keep it where the office keeps its keys. Others can be added later, each with a key of their own.</source>
        <translation>Elle verrouille votre clé de signature et la clé du parc sur ce téléphone. Personne ne peut la récupérer&#xa0;: l’écrire et la garder là où le bureau garde ses clés. D’autres personnes peuvent être ajoutées plus tard, chacune avec sa propre clé.</translation>
    </message>
    <message>
        <source>Make the keys and the yard</source>
        <translation>Créer les clés et le parc</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Créer de nouvelles clés</translation>
    </message>
    <message>
        <source>Make the new keys</source>
        <translation>Créer les nouvelles clés</translation>
    </message>
</context>
<context>
    <name>MonitorStep</name>
    <message>
        <source>In the monitor&apos;s own words, if you like</source>
        <translation>Si vous voulez, avec les mots du moniteur</translation>
    </message>
</context>
<context>
    <name>MoveStep</name>
    <message>
        <source>Move the practice loader</source>
        <translation>Faire bouger la chargeuse d’exercice</translation>
    </message>
    <message>
        <source>It does what the step asks; on a real machine your hands are on the levers</source>
        <translation>Elle fait ce que l’étape demande&#xa0;; sur une vraie machine, vos mains sont sur les leviers</translation>
    </message>
    <message>
        <source>The pass is done</source>
        <translation>Passe faite</translation>
    </message>
    <message>
        <source>It stands there</source>
        <translation>En position</translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Échec</translation>
    </message>
    <message>
        <source>Boom at its lowest</source>
        <translation>Bras au plus bas</translation>
    </message>
    <message>
        <source>Boom at its highest</source>
        <translation>Bras au plus haut</translation>
    </message>
    <message>
        <source>Boom level</source>
        <translation>Bras à l’horizontale</translation>
    </message>
    <message>
        <source>Boom at carry height</source>
        <translation>Bras à la hauteur de transport</translation>
    </message>
    <message>
        <source>Boom down, on the ground</source>
        <translation>Bras abaissé, au sol</translation>
    </message>
    <message>
        <source>bucket racked back</source>
        <translation>godet cavé</translation>
    </message>
    <message>
        <source>bucket level</source>
        <translation>godet de niveau</translation>
    </message>
    <message>
        <source>bucket dumped</source>
        <translation>godet en déversement</translation>
    </message>
    <message>
        <source>come from below</source>
        <translation>venir par le bas</translation>
    </message>
    <message>
        <source>come from above</source>
        <translation>venir par le haut</translation>
    </message>
    <message>
        <source>Raise</source>
        <translation>Lever</translation>
    </message>
    <message>
        <source>Lower</source>
        <translation>Abaisser</translation>
    </message>
    <message>
        <source>slowly</source>
        <translation>lentement</translation>
    </message>
    <message>
        <source>fast</source>
        <translation>vite</translation>
    </message>
    <message>
        <source>at your own pace</source>
        <translation>à votre rythme</translation>
    </message>
    <message>
        <source>bucket empty</source>
        <translation>godet vide</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>avec la masse d’essai</translation>
    </message>
    <message>
        <source>This pass needs a log: open live readings, or bring the log as a file.</source>
        <translation>Cette passe demande un enregistrement&#xa0;: ouvrir les lectures en direct, ou fournir l’enregistrement en fichier.</translation>
    </message>
    <message>
        <source>Bring the log as a file</source>
        <translation>Fournir l’enregistrement en fichier</translation>
    </message>
    <message>
        <source>Practise with the simulated loader</source>
        <translation>S’exercer avec la chargeuse simulée</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Enregistrements de levage (%1)</translation>
    </message>
</context>
<context>
    <name>NoteStep</name>
    <message>
        <source>Write it down</source>
        <translation>Noter</translation>
    </message>
    <message>
        <source>Nothing to note</source>
        <translation>Rien à noter</translation>
    </message>
    <message>
        <source>In your own words</source>
        <translation>Avec vos propres mots</translation>
    </message>
</context>
<context>
    <name>PeoplePage</name>
    <message>
        <source>People</source>
        <translation>Personnes</translation>
    </message>
    <message>
        <source>May not sign any more</source>
        <translation>Ne peut plus signer</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>Clé %1</translation>
    </message>
    <message>
        <source>Their name</source>
        <translation>Son nom</translation>
    </message>
    <message>
        <source>A passphrase of their own, 12 characters or more</source>
        <translation>Sa propre phrase secrète, 12 caractères ou plus</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>La phrase secrète du parc</translation>
    </message>
    <message>
        <source>Add this person</source>
        <translation>Ajouter cette personne</translation>
    </message>
    <message>
        <source>Add a person</source>
        <translation>Ajouter une personne</translation>
    </message>
    <message>
        <source>Add somebody on their own phone</source>
        <translation>Admettre quelqu’un sur son propre téléphone</translation>
    </message>
    <message>
        <source>Signs on their own phone</source>
        <translation>Signe sur son propre téléphone</translation>
    </message>
</context>
<context>
    <name>Plot</name>
    <message>
        <source>Slow, lowering</source>
        <translation>Lente, en abaissant</translation>
    </message>
    <message>
        <source>Fast, lowering</source>
        <translation>Rapide, en abaissant</translation>
    </message>
    <message>
        <source>Slow, raising</source>
        <translation>Lente, en levant</translation>
    </message>
    <message>
        <source>Fast, raising</source>
        <translation>Rapide, en levant</translation>
    </message>
</context>
<context>
    <name>ProofChart</name>
    <message>
        <source>Reading %1: %2 %</source>
        <translation>Lecture %1 : %2 %</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>hors tolérance</translation>
    </message>
    <message>
        <source>Mean %1 %.</source>
        <translation>Moyenne %1 %.</translation>
    </message>
    <message>
        <source>The mean may be off by %1 %.</source>
        <translation>La moyenne peut s’écarter de %1 %.</translation>
    </message>
    <message>
        <source>Errors of the proof</source>
        <translation>Erreurs du contrôle</translation>
    </message>
    <message>
        <source>Error in % of the known mass, over the number of the reading</source>
        <translation>Erreur en % de la masse connue, selon le numéro de la lecture</translation>
    </message>
    <message>
        <source>Chart of the errors of the proof.</source>
        <translation>Graphique des erreurs du contrôle.</translation>
    </message>
    <message>
        <source>Within the tolerance</source>
        <translation>Dans la tolérance</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>Hors tolérance</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Moyenne</translation>
    </message>
    <message>
        <source>Tolerance of the mean</source>
        <translation>Tolérance de la moyenne</translation>
    </message>
</context>
<context>
    <name>ReadingStep</name>
    <message>
        <source>steady</source>
        <translation>stable</translation>
    </message>
    <message>
        <source>not steady yet</source>
        <translation>pas encore stable</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Saisir</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>Saisir %1 %2</translation>
    </message>
    <message>
        <source>Typed: %1</source>
        <translation>Saisi&#xa0;: %1</translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation>Entre %1 et %2</translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation>Au moins %1</translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation>Au plus %1</translation>
    </message>
    <message>
        <source>Last time: %1</source>
        <translation>La dernière fois&#xa0;: %1</translation>
    </message>
    <message>
        <source>Practice: the instrument shows %1</source>
        <translation>Exercice&#xa0;: l’instrument affiche %1</translation>
    </message>
    <message>
        <source>Unit %1</source>
        <translation>Unité %1</translation>
    </message>
    <message>
        <source>Take the live value</source>
        <translation>Prendre la valeur en direct</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>nothing comes yet</source>
        <translation>rien ne vient encore</translation>
    </message>
    <message>
        <source>It is the known mass: %1</source>
        <translation>C’est la masse connue&#xa0;: %1</translation>
    </message>
    <message>
        <source>The app weighed %1 in this lift</source>
        <translation>L’application a pesé %1 dans ce levage</translation>
    </message>
    <message>
        <source>± %1. Take it where the machine itself takes no values</source>
        <translation>± %1. À prendre là où la machine elle-même n’accepte pas de valeurs</translation>
    </message>
    <message>
        <source>Not measured</source>
        <translation>Non mesuré</translation>
    </message>
    <message>
        <source>In the picture: the slope of the line from A to B</source>
        <translation>Sur l’image : l’inclinaison de la ligne de A à B</translation>
    </message>
    <message>
        <source>In the picture: from A to B</source>
        <translation>Sur l’image : de A à B</translation>
    </message>
    <message>
        <source>The loader is a plausible one: its own pins are not known yet.</source>
        <translation>La chargeuse est une chargeuse plausible : ses propres axes ne sont pas encore connus.</translation>
    </message>
    <message>
        <source>Take the phone&apos;s level: %1°</source>
        <translation>Prendre le niveau du téléphone : %1°</translation>
    </message>
    <message>
        <source>Measure with the phone as a level</source>
        <translation>Mesurer avec le téléphone comme niveau</translation>
    </message>
    <message>
        <source>%1. Measured with the phone&apos;s top towards the bucket?</source>
        <translation>%1. Mesuré avec le haut du téléphone vers le godet ?</translation>
    </message>
    <message>
        <source>Lay it with its top towards the bucket</source>
        <translation>Le poser le haut vers le godet</translation>
    </message>
</context>
<context>
    <name>RecordPage</name>
    <message>
        <source>Record</source>
        <translation>Procès-verbal</translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation>Remettre</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>Enregistrer en PDF</translation>
    </message>
    <message>
        <source>Save the sealed record itself</source>
        <translation>Enregistrer le procès-verbal scellé lui-même</translation>
    </message>
    <message>
        <source>Any program that knows JSON Web Signatures can check it</source>
        <translation>Tout programme qui connaît JSON Web Signatures peut le vérifier</translation>
    </message>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>Enregistrer l’étiquette en PDF</translation>
    </message>
    <message>
        <source>Sign it too</source>
        <translation>Signer aussi</translation>
    </message>
    <message>
        <source>A further signature, with your own key</source>
        <translation>Une signature de plus, avec votre propre clé</translation>
    </message>
    <message>
        <source>Correct it</source>
        <translation>Corriger</translation>
    </message>
    <message>
        <source>By a new record that names this one; this one stays as it is</source>
        <translation>Par un nouveau procès-verbal qui nomme celui-ci&#xa0;; celui-ci reste tel quel</translation>
    </message>
    <message>
        <source>What was wrong, and what is right</source>
        <translation>Ce qui était faux, et ce qui est juste</translation>
    </message>
    <message>
        <source>Seal the correction</source>
        <translation>Sceller la correction</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Graphiques</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Passes, ce que l’ajustement laisse, erreurs du contrôle</translation>
    </message>
    <message>
        <source>Calibration certificate</source>
        <translation>Certificat d’étalonnage</translation>
    </message>
    <message>
        <source>To print, or for programs</source>
        <translation>À imprimer, ou pour des programmes</translation>
    </message>
    <message>
        <source>Where it stands</source>
        <translation>Où il en est</translation>
    </message>
</context>
<context>
    <name>ResidualChart</name>
    <message>
        <source>bucket empty</source>
        <translation>godet vide</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>avec la masse d’essai</translation>
    </message>
    <message>
        <source>with a load</source>
        <translation>avec une charge</translation>
    </message>
    <message>
        <source>Standard deviation %1 %2, largest %3 %2</source>
        <translation>Écart-type %1 %2, plus grand écart %3 %2</translation>
    </message>
    <message>
        <source>What the fit leaves</source>
        <translation>Ce que l’ajustement laisse</translation>
    </message>
    <message>
        <source>Measured less fitted, in %1, over the boom&apos;s angle; the chosen pass is drawn thick</source>
        <translation>Mesuré moins ajusté, en %1, selon l’angle du bras ; la passe choisie est en trait épais</translation>
    </message>
    <message>
        <source>Chart of what the fit leaves.</source>
        <translation>Graphique de ce que l’ajustement laisse.</translation>
    </message>
</context>
<context>
    <name>ResumeStep</name>
    <message>
        <source>Go on</source>
        <translation>Continuer</translation>
    </message>
    <message>
        <source>Take the job over as %1</source>
        <translation>Prendre en charge l’intervention comme %1</translation>
    </message>
    <message>
        <source>The job was interrupted</source>
        <translation>L’intervention a été interrompue</translation>
    </message>
    <message>
        <source>Everything that was done is kept. Before you go on: is the machine as you left it, and is nobody near it? Cautions that still hold are shown again, and &quot;the zone is clear&quot; is asked for again.</source>
        <translation>Tout ce qui a été fait est gardé. Avant de continuer&#xa0;: la machine est-elle comme vous l’avez laissée, et n’y a-t-il personne à proximité&#xa0;? Les mises en garde encore valables sont affichées à nouveau, et «&#xa0;zone dégagée&#xa0;» est redemandé.</translation>
    </message>
    <message>
        <source>Somebody else</source>
        <translation>Quelqu’un d’autre</translation>
    </message>
    <message>
        <source>%1 is in charge.</source>
        <translation>%1 en a la charge.</translation>
    </message>
    <message>
        <source>They go on with it. What you confirm as a second person you then confirm beside them, with your own passphrase.</source>
        <translation>Cette personne continue. Ce que vous confirmez comme seconde personne, vous le confirmez alors à côté d’elle, avec votre propre phrase secrète.</translation>
    </message>
</context>
<context>
    <name>SavedFile</name>
    <message>
        <source>Saved: %1</source>
        <translation>Enregistré : %1</translation>
    </message>
    <message>
        <source>Hand the file to another app</source>
        <translation>Transmettre le fichier à une autre application</translation>
    </message>
    <message>
        <source>Hand the file to</source>
        <translation>Transmettre le fichier à</translation>
    </message>
</context>
<context>
    <name>ScanView</name>
    <message>
        <source>This device has no camera. Choose a picture of the code.</source>
        <translation>Cet appareil n’a pas de caméra. Choisissez une image du code.</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>Le téléphone ne laisse pas l’application utiliser l’appareil photo. L’autoriser dans les réglages du téléphone, ou choisir une image.</translation>
    </message>
    <message>
        <source>There is no code in this picture. Take it from nearer and straight from the front, the whole code in it.</source>
        <translation>Il n’y a pas de code dans cette image. Prenez-la de plus près et bien en face, avec tout le code.</translation>
    </message>
    <message>
        <source>Choose a picture of the code</source>
        <translation>Choisir une image du code</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Images (%1)</translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation>Réglages</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Apparence</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Jour</translation>
    </message>
    <message>
        <source>Night</source>
        <translation>Nuit</translation>
    </message>
    <message>
        <source>Sunlight</source>
        <translation>Plein soleil</translation>
    </message>
    <message>
        <source>Black on white, thick lines</source>
        <translation>Noir sur blanc, traits épais</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Taille du texte</translation>
    </message>
    <message>
        <source>Gloves: larger keys</source>
        <translation>Gants&#xa0;: touches plus grandes</translation>
    </message>
    <message>
        <source>Wet glass: hold a key for it to count</source>
        <translation>Écran mouillé&#xa0;: maintenir une touche pour qu’elle compte</translation>
    </message>
    <message>
        <source>Sounds and vibration</source>
        <translation>Sons et vibrations</translation>
    </message>
    <message>
        <source>Speak the instructions</source>
        <translation>Lire les instructions à voix haute</translation>
    </message>
    <message>
        <source>Speak the instructions (this phone has no voice in this language)</source>
        <translation>Lire les instructions à voix haute (ce téléphone n’a pas de voix dans cette langue)</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Unités</translation>
    </message>
    <message>
        <source>Metric: kg, bar, °C, m</source>
        <translation>Métriques&#xa0;: kg, bar, °C, m</translation>
    </message>
    <message>
        <source>US: lb, psi, °F, in</source>
        <translation>États-Unis&#xa0;: lb, psi, °F, in</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Langue</translation>
    </message>
    <message>
        <source>This translation was made by a machine. A native speaker who knows the trade has still to review it.</source>
        <translation>Cette traduction a été faite par une machine. Une personne de langue maternelle française qui connaît le métier doit encore la relire.</translation>
    </message>
    <message>
        <source>You act as</source>
        <translation>Vous agissez comme</translation>
    </message>
    <message>
        <source>People who may sign on this phone</source>
        <translation>Personnes qui peuvent signer sur ce téléphone</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Lectures en direct</translation>
    </message>
    <message>
        <source>The phone as a level</source>
        <translation>Le téléphone comme niveau</translation>
    </message>
    <message>
        <source>Lock</source>
        <translation>Verrouiller</translation>
    </message>
    <message>
        <source>The next person opens it with their own key</source>
        <translation>La personne suivante l’ouvre avec sa propre clé</translation>
    </message>
    <message>
        <source>Hingepin %1. The app is free software under the GNU General Public License, version 3 or later; its engine under the Apache License 2.0. It never writes to a machine. A verdict here does not make a scale legal for trade; that needs the authority in charge.</source>
        <translation>Hingepin %1. L’application est un logiciel libre sous la GNU General Public License, version 3 ou ultérieure&#xa0;; son moteur, sous l’Apache License 2.0. Elle n’écrit jamais dans une machine. Un verdict rendu ici ne rend pas un système de pesage légal pour les transactions commerciales&#xa0;; il faut pour cela l’autorité compétente.</translation>
    </message>
    <message>
        <source>Save the app&apos;s log</source>
        <translation>Enregistrer le journal de l’application</translation>
    </message>
    <message>
        <source>What it did and what failed, without names: for whoever looks into a fault</source>
        <translation>Ce qu’elle a fait et ce qui a échoué, sans noms : pour qui recherche un défaut</translation>
    </message>
    <message>
        <source>Exchange with the office</source>
        <translation>Échange avec le bureau</translation>
    </message>
    <message>
        <source>Where records are sent to, and what still waits</source>
        <translation>Où vont les procès-verbaux et ce qui attend encore</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Comment les contrôles sont jugés dans ce parc</translation>
    </message>
    <message>
        <source>Tolerance and decision rule, where a unit does not say otherwise</source>
        <translation>Tolérance et règle de décision, là où un engin ne dit pas autre chose</translation>
    </message>
</context>
<context>
    <name>SignStep</name>
    <message>
        <source>Sign</source>
        <translation>Signer</translation>
    </message>
    <message>
        <source>Clear the glass</source>
        <translation>Effacer la signature</translation>
    </message>
    <message>
        <source>Absent</source>
        <translation>Absent&#xa0;: ne signe pas</translation>
    </message>
    <message>
        <source>Refused</source>
        <translation>Refusé&#xa0;: ne veut pas signer</translation>
    </message>
    <message>
        <source>You sign as %1, %2, with your key on this phone.</source>
        <translation>Vous signez comme %1, %2, avec votre clé sur ce téléphone.</translation>
    </message>
</context>
<context>
    <name>SignaturePad</name>
    <message>
        <source>Sign here with a finger</source>
        <translation>Signer ici avec un doigt</translation>
    </message>
</context>
<context>
    <name>StateMark</name>
    <message>
        <source>ready</source>
        <translation>prêt</translation>
    </message>
    <message>
        <source>due soon</source>
        <translation>échéance proche</translation>
    </message>
    <message>
        <source>due</source>
        <translation>à échéance</translation>
    </message>
    <message>
        <source>restricted</source>
        <translation>usage restreint</translation>
    </message>
    <message>
        <source>do not use</source>
        <translation>ne pas utiliser</translation>
    </message>
    <message>
        <source>not calibrated</source>
        <translation>non étalonné</translation>
    </message>
</context>
<context>
    <name>SyncPage</name>
    <message>
        <source>Exchange with the office</source>
        <translation>Échange avec le bureau</translation>
    </message>
    <message>
        <source>Records, signatures and photos go to a place of the yard&apos;s own and come from there to every phone. What arrives is verified before it counts.</source>
        <translation>Les procès-verbaux, signatures et photos vont à un endroit propre au parc et arrivent de là sur chaque téléphone. Ce qui arrive est vérifié avant de compter.</translation>
    </message>
    <message>
        <source>The password is not kept for you on this phone. Enter it once.</source>
        <translation>Le mot de passe n&apos;est pas conservé pour vous sur ce téléphone. Saisissez-le une fois.</translation>
    </message>
    <message>
        <source>Kind of place</source>
        <translation>Type d&apos;endroit</translation>
    </message>
    <message>
        <source>Share (WebDAV)</source>
        <translation>Partage (WebDAV)</translation>
    </message>
    <message>
        <source>Object storage (S3)</source>
        <translation>Stockage objet (S3)</translation>
    </message>
    <message>
        <source>Address, beginning with https://</source>
        <translation>Adresse, commence par https://</translation>
    </message>
    <message>
        <source>Bucket</source>
        <translation>Bucket</translation>
    </message>
    <message>
        <source>Region</source>
        <translation>Région</translation>
    </message>
    <message>
        <source>Id of the access key</source>
        <translation>Identifiant de la clé d&apos;accès</translation>
    </message>
    <message>
        <source>User name</source>
        <translation>Nom d&apos;utilisateur</translation>
    </message>
    <message>
        <source>Secret key</source>
        <translation>Clé secrète</translation>
    </message>
    <message>
        <source>Password of the share</source>
        <translation>Mot de passe du partage</translation>
    </message>
    <message>
        <source>By itself, when there is a network</source>
        <translation>De lui-même, quand il y a un réseau</translation>
    </message>
    <message>
        <source>Also over a network that is paid for by what it carries</source>
        <translation>Aussi par un réseau facturé au volume</translation>
    </message>
    <message>
        <source>Waits to be sent</source>
        <translation>En attente d&apos;envoi</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>Rien n&apos;attend.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>depuis le %1</translation>
    </message>
    <message>
        <source>and %1 more</source>
        <translation>et %1 de plus</translation>
    </message>
    <message>
        <source>Arrived and not believed</source>
        <translation>Arrivé et non cru</translation>
    </message>
    <message>
        <source>Keep this place</source>
        <translation>Garder cet endroit</translation>
    </message>
    <message>
        <source>Send and fetch now</source>
        <translation>Envoyer et recevoir maintenant</translation>
    </message>
    <message>
        <source>Stop for now</source>
        <translation>Arrêter pour l&apos;instant</translation>
    </message>
    <message>
        <source>It goes on from here the next time</source>
        <translation>La prochaine fois, il reprendra d&apos;ici</translation>
    </message>
    <message>
        <source>Change the place</source>
        <translation>Changer l&apos;endroit</translation>
    </message>
    <message>
        <source>Set up the place</source>
        <translation>Configurer l&apos;endroit</translation>
    </message>
    <message>
        <source>Certificate of the share&apos;s own authority</source>
        <translation>Certificat de l’autorité propre au partage</translation>
    </message>
    <message>
        <source>Chosen: %1</source>
        <translation>Choisi : %1</translation>
    </message>
    <message>
        <source>Only where the yard made its certificate itself: choose the file (PEM) that whoever runs the share gives out</source>
        <translation>Seulement si le parc a établi lui-même son certificat : choisissez le fichier (PEM) que remet la personne qui gère le partage</translation>
    </message>
    <message>
        <source>Certificates (%1)</source>
        <translation>Certificats (%1)</translation>
    </message>
</context>
<context>
    <name>TagStep</name>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>Enregistrer l’étiquette en PDF</translation>
    </message>
    <message>
        <source>The tag hangs on the machine</source>
        <translation>L’étiquette est accrochée à la machine</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Enregistré&#xa0;: %1</translation>
    </message>
</context>
<context>
    <name>TermsPage</name>
    <message>
        <source>How proofs of %1 are judged</source>
        <translation>Comment les contrôles de %1 sont jugés</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Comment les contrôles sont jugés dans ce parc</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it. What is left open here the yard says.</source>
        <translation>Les travaux qui commencent à partir de maintenant sont jugés ainsi. Ce qui reste ouvert ici, le parc le dit.</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it, unless the unit itself says otherwise.</source>
        <translation>Les travaux qui commencent à partir de maintenant sont jugés ainsi, sauf si l’engin lui-même dit autre chose.</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Tolérance</translation>
    </message>
    <message>
        <source>As the yard says</source>
        <translation>Comme le parc le dit</translation>
    </message>
    <message>
        <source>As each procedure says</source>
        <translation>Comme chaque procédure le dit</translation>
    </message>
    <message>
        <source>A percentage of the load</source>
        <translation>Un pourcentage de la charge</translation>
    </message>
    <message>
        <source>A class of OIML R 76</source>
        <translation>Une classe de l’OIML R 76</translation>
    </message>
    <message>
        <source>Scales that weigh at rest</source>
        <translation>Balances qui pèsent à l’arrêt</translation>
    </message>
    <message>
        <source>A class of OIML R 51, category Y</source>
        <translation>Une classe de l’OIML R 51, catégorie Y</translation>
    </message>
    <message>
        <source>Scales that weigh each load by themselves</source>
        <translation>Balances qui pèsent chaque charge d’elles-mêmes</translation>
    </message>
    <message>
        <source>A class of NIST Handbook 44, 2.20</source>
        <translation>Une classe du NIST Handbook 44, 2.20</translation>
    </message>
    <message>
        <source>Scales in the United States</source>
        <translation>Balances aux États-Unis</translation>
    </message>
    <message>
        <source>Steps of our own</source>
        <translation>Nos propres paliers</translation>
    </message>
    <message>
        <source>Largest error, up or down, %</source>
        <translation>Plus grande erreur, en plus ou en moins, %</translation>
    </message>
    <message>
        <source>Per cent of</source>
        <translation>Pour cent de</translation>
    </message>
    <message>
        <source>The mass that is lifted</source>
        <translation>La masse levée</translation>
    </message>
    <message>
        <source>The rated payload</source>
        <translation>La charge utile nominale</translation>
    </message>
    <message>
        <source>Class</source>
        <translation>Classe</translation>
    </message>
    <message>
        <source>Scale division d, %1</source>
        <translation>Échelon d, %1</translation>
    </message>
    <message>
        <source>Verification interval e, %1</source>
        <translation>Échelon de vérification e, %1</translation>
    </message>
    <message>
        <source>Which limits</source>
        <translation>Quelles limites</translation>
    </message>
    <message>
        <source>Acceptance: new or just repaired</source>
        <translation>D’acceptation : neuve ou tout juste réparée</translation>
    </message>
    <message>
        <source>Maintenance: in use</source>
        <translation>De maintien : en usage</translation>
    </message>
    <message>
        <source>Initial: new or just repaired</source>
        <translation>Initiale : neuve ou tout juste réparée</translation>
    </message>
    <message>
        <source>In service</source>
        <translation>En service</translation>
    </message>
    <message>
        <source>Loads up to, %1</source>
        <translation>Charges jusqu’à, %1</translation>
    </message>
    <message>
        <source>Largest error there, %1</source>
        <translation>Plus grande erreur là, %1</translation>
    </message>
    <message>
        <source>Remove this step</source>
        <translation>Retirer ce palier</translation>
    </message>
    <message>
        <source>One more step</source>
        <translation>Un palier de plus</translation>
    </message>
    <message>
        <source>When is it passed?</source>
        <translation>Quand est-il réussi ?</translation>
    </message>
    <message>
        <source>When its error is within the limit</source>
        <translation>Quand l’erreur est dans la limite</translation>
    </message>
    <message>
        <source>Near the limit a wrong verdict is about as likely as a right one</source>
        <translation>Près de la limite, un faux verdict est à peu près aussi probable qu’un bon</translation>
    </message>
    <message>
        <source>When it is plain that its error is within the limit</source>
        <translation>Quand il est sûr que l’erreur est dans la limite</translation>
    </message>
    <message>
        <source>The doubt of the proof counts against the scale</source>
        <translation>Le doute du contrôle compte contre la balance</translation>
    </message>
    <message>
        <source>How sure, %</source>
        <translation>Avec quelle sûreté, %</translation>
    </message>
    <message>
        <source>A verdict by any of these does not make a scale legal for trade. That needs the authority in charge.</source>
        <translation>Aucun verdict selon ces règles ne rend une balance légale pour le commerce. Cela demande l’autorité compétente.</translation>
    </message>
    <message>
        <source>Nothing was saved: see above.</source>
        <translation>Rien n’a été enregistré : voir plus haut.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Enregistrer</translation>
    </message>
</context>
<context>
    <name>UnitEditPage</name>
    <message>
        <source>The machine&apos;s own routine</source>
        <translation>La procédure propre à la machine</translation>
    </message>
    <message>
        <source>Readings typed from its monitor</source>
        <translation>Lectures de son moniteur, saisies</translation>
    </message>
    <message>
        <source>Logs or a live feed</source>
        <translation>Enregistrements ou lectures en direct</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>Modifier %1</translation>
    </message>
    <message>
        <source>New unit</source>
        <translation>Nouvel engin</translation>
    </message>
    <message>
        <source>Number or name of the unit</source>
        <translation>Numéro ou nom de l’engin</translation>
    </message>
    <message>
        <source>Rated payload, kg</source>
        <translation>Charge utile nominale, kg</translation>
    </message>
    <message>
        <source>Lift cylinders, how many</source>
        <translation>Vérins de levage, nombre</translation>
    </message>
    <message>
        <source>Lift cylinder bore, mm</source>
        <translation>Vérin de levage, alésage, mm</translation>
    </message>
    <message>
        <source>Lift cylinder rod, mm</source>
        <translation>Vérin de levage, tige, mm</translation>
    </message>
    <message>
        <source>Weigh window from boom angle, degrees (if known)</source>
        <translation>Fenêtre de pesée depuis l’angle du bras, degrés (si connu)</translation>
    </message>
    <message>
        <source>Weigh window to boom angle, degrees (if known)</source>
        <translation>Fenêtre de pesée jusqu’à l’angle du bras, degrés (si connu)</translation>
    </message>
    <message>
        <source>Oil at least, °C, before pressures are taught (if the manual says)</source>
        <translation>Huile au moins à, °C, avant l’apprentissage des pressions (si le manuel le dit)</translation>
    </message>
    <message>
        <source>Test mass of the yard, kg (if there is one)</source>
        <translation>Masse d’essai du parc, kg (s’il y en a une)</translation>
    </message>
    <message>
        <source>Due again after, hours (if the yard says)</source>
        <translation>Prochaine échéance après, heures (si le parc le dit)</translation>
    </message>
    <message>
        <source>It can be taught by</source>
        <translation>Apprentissage possible par</translation>
    </message>
    <message>
        <source>Its monitor shows</source>
        <translation>Son moniteur affiche</translation>
    </message>
    <message>
        <source>Press the unit in which it shows it; press it again if it does not show it at all. Mind which ton it is.</source>
        <translation>Appuyer sur l’unité dans laquelle il affiche la grandeur&#xa0;; appuyer encore dessus s’il ne l’affiche pas du tout. Regarder de quelle tonne il s’agit.</translation>
    </message>
    <message>
        <source>For practice: an invented machine</source>
        <translation>Pour s’exercer&#xa0;: une machine fictive</translation>
    </message>
    <message>
        <source>Its records say so; the simulated loader may stand in for it</source>
        <translation>Ses procès-verbaux le disent&#xa0;; la chargeuse simulée peut la remplacer</translation>
    </message>
    <message>
        <source>Linkage</source>
        <translation>Timonerie</translation>
    </message>
    <message>
        <source>Its pins are on file: empty passes are enough to calibrate.</source>
        <translation>Ses axes sont enregistrés&#xa0;: des passes à vide suffisent pour étalonner.</translation>
    </message>
    <message>
        <source>Its pins are not known. It can be calibrated with a known mass all the same.</source>
        <translation>Ses axes ne sont pas connus. L’étalonnage reste possible avec une masse connue.</translation>
    </message>
    <message>
        <source>Read the pins from a file</source>
        <translation>Lire les axes dans un fichier</translation>
    </message>
    <message>
        <source>Unit or job files (%1)</source>
        <translation>Fichiers d’engin ou d’intervention (%1)</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Enregistrer</translation>
    </message>
</context>
<context>
    <name>UnitPage</name>
    <message>
        <source>With %1</source>
        <translation>Avec %1</translation>
    </message>
    <message>
        <source>Due again %1</source>
        <translation>Prochaine échéance&#xa0;: %1</translation>
    </message>
    <message>
        <source>Save its label as a PDF</source>
        <translation>Enregistrer son autocollant en PDF</translation>
    </message>
    <message>
        <source>Begin a job</source>
        <translation>Commencer une intervention</translation>
    </message>
    <message>
        <source>Edit the unit</source>
        <translation>Modifier l’engin</translation>
    </message>
    <message>
        <source>Attachments</source>
        <translation>Accessoires</translation>
    </message>
    <message>
        <source>Compare check-out and return</source>
        <translation>Comparer départ et retour</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Procès-verbaux</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Aucun pour l’instant.</translation>
    </message>
    <message>
        <source>not trusted</source>
        <translation>non fiable</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>corrigé</translation>
    </message>
    <message>
        <source>Its zero and span over the months</source>
        <translation>Son zéro et son étendue au fil des mois</translation>
    </message>
    <message>
        <source>Stops: what to set</source>
        <translation>Arrêts : que régler</translation>
    </message>
    <message>
        <source>A disputed load: what was it worth?</source>
        <translation>Une charge contestée : que valait-elle ?</translation>
    </message>
    <message>
        <source>Something happened to it</source>
        <translation>Il lui est arrivé quelque chose</translation>
    </message>
    <message>
        <source>Repaired, welded, overloaded, battery lost: the scale is due again</source>
        <translation>Réparation, soudure, surcharge, batterie vide : le système de pesage est de nouveau à contrôler</translation>
    </message>
    <message>
        <source>How its proofs are judged</source>
        <translation>Comment ses contrôles sont jugés</translation>
    </message>
    <message>
        <source>Survey its linkage</source>
        <translation>Relever sa timonerie</translation>
    </message>
    <message>
        <source>Its pins are not on file: a tape and an inclinometer find them, and its scale weighs more surely</source>
        <translation>Ses axes ne sont pas enregistrés : un mètre et un inclinomètre les trouvent, et sa balance pèse plus sûrement</translation>
    </message>
</context>
<context>
    <name>UnlockPage</name>
    <message>
        <source>Demo yard: who are you?</source>
        <translation>Parc de démonstration&#xa0;: qui êtes-vous&#xa0;?</translation>
    </message>
    <message>
        <source>Who is at the phone?</source>
        <translation>Qui tient le téléphone&#xa0;?</translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation>Phrase secrète</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Ouvrir</translation>
    </message>
    <message>
        <source>Another yard</source>
        <translation>Autre parc</translation>
    </message>
    <message>
        <source>All of them are invented. Choose whom you want to be.</source>
        <translation>Toutes sont inventées. Choisir qui vous voulez être.</translation>
    </message>
    <message>
        <source>Choose your name.</source>
        <translation>Choisir votre nom.</translation>
    </message>
</context>
<context>
    <name>WaitStep</name>
    <message>
        <source>Compute again</source>
        <translation>Recalculer</translation>
    </message>
</context>
<context>
    <name>ZoneStep</name>
    <message>
        <source>Hold: the zone is clear</source>
        <translation>Maintenir&#xa0;: zone dégagée</translation>
    </message>
    <message>
        <source>The machine moves next. Nobody near it, nobody under the boom, everybody in sight.</source>
        <translation>La machine va bouger. Personne à proximité, personne sous le bras, tout le monde en vue.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile</name>
    <message>
        <source>read</source>
        <translation>lu</translation>
    </message>
    <message>
        <source>zone clear</source>
        <translation>zone dégagée</translation>
    </message>
    <message>
        <source>gone back to do it again</source>
        <translation>retour en arrière pour refaire</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>oui</translation>
    </message>
    <message>
        <source>no</source>
        <translation>non</translation>
    </message>
    <message>
        <source>done</source>
        <translation>fait</translation>
    </message>
    <message>
        <source>did not work</source>
        <translation>échec</translation>
    </message>
    <message>
        <source>photo or file kept</source>
        <translation>photo ou fichier gardé</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>omis</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>signé</translation>
    </message>
    <message>
        <source>not there to sign</source>
        <translation>absent</translation>
    </message>
    <message>
        <source>refused to sign</source>
        <translation>refusé</translation>
    </message>
    <message>
        <source>nobody there to confirm</source>
        <translation>personne pour confirmer</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::App</name>
    <message>
        <source>Technician</source>
        <translation>Technicien</translation>
    </message>
    <message>
        <source>Operator</source>
        <translation>Opérateur</translation>
    </message>
    <message>
        <source>Supervisor</source>
        <translation>Responsable</translation>
    </message>
    <message>
        <source>Safety lead</source>
        <translation>Responsable sécurité</translation>
    </message>
    <message>
        <source>Yard checker</source>
        <translation>Contrôleur du parc</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Client</translation>
    </message>
    <message>
        <source>DANGER</source>
        <translation>DANGER</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>AVERTISSEMENT</translation>
    </message>
    <message>
        <source>CAUTION</source>
        <translation>ATTENTION</translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation>AVIS</translation>
    </message>
    <message>
        <source>Last time the app ended in a fault of its own. What was answered is kept: a job opens where it was. Under Settings you can save the log for whoever looks into it.</source>
        <translation>La dernière fois, l’application s’est arrêtée à cause d’un défaut interne. Les réponses sont conservées : un travail s’ouvre là où il en était. Dans Réglages, vous pouvez enregistrer le journal pour qui en cherche la cause.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Joiner</name>
    <message>
        <source>You are let in. The yard&apos;s lists did not fit in the code: they come with the next exchange, or as a file. Until then you can&apos;t sign on this phone.</source>
        <translation>Vous êtes admis. Les listes du parc ne tenaient pas dans le code : elles viennent avec le prochain échange, ou par un fichier. D’ici là, vous ne pouvez pas signer sur ce téléphone.</translation>
    </message>
    <message>
        <source>The yard&apos;s key is not on this phone. Let people in on the phone on which the yard was made.</source>
        <translation>La clé du parc n’est pas sur ce téléphone. Admettez les personnes sur le téléphone où le parc a été créé.</translation>
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
        <translation>Impossible d’ouvrir %1&#xa0;: %2</translation>
    </message>
    <message>
        <source>The simulated loader is for practice units only.</source>
        <translation>La chargeuse simulée est réservée aux engins d’exercice.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Photos</name>
    <message>
        <source>Practice picture, invented</source>
        <translation>Image d’exercice, fictive</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Profiles</name>
    <message>
        <source>This file holds no linkage. A unit&apos;s profile, a calibration job, or the linkage alone is needed.</source>
        <translation>Ce fichier ne contient pas de timonerie. Il faut le profil d’un engin, une intervention d’étalonnage, ou la timonerie seule.</translation>
    </message>
    <message>
        <source>Mass on the scale</source>
        <translation>Masse pesée</translation>
    </message>
    <message>
        <source>Boom angle</source>
        <translation>Angle du bras</translation>
    </message>
    <message>
        <source>Boom sensor</source>
        <translation>Capteur du bras</translation>
    </message>
    <message>
        <source>Bucket sensor</source>
        <translation>Capteur du godet</translation>
    </message>
    <message>
        <source>Lift pressure, head side</source>
        <translation>Pression de levage, côté fond</translation>
    </message>
    <message>
        <source>Lift pressure, rod side</source>
        <translation>Pression de levage, côté tige</translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation>Température d’huile</translation>
    </message>
    <message>
        <source>Operating hours</source>
        <translation>Heures de service</translation>
    </message>
    <message>
        <source>Fuel level</source>
        <translation>Niveau de carburant</translation>
    </message>
    <message>
        <source>counts</source>
        <translation>points</translation>
    </message>
    <message>
        <source>Choose a class.</source>
        <translation>Choisir une classe.</translation>
    </message>
    <message>
        <source>Type a number from 50 to 99.99.</source>
        <translation>Saisir un nombre de 50 à 99,99.</translation>
    </message>
    <message>
        <source>Type a number.</source>
        <translation>Saisir un nombre.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Syncer</name>
    <message>
        <source>You begin each exchange yourself.</source>
        <translation>Vous lancez chaque échange vous-même.</translation>
    </message>
    <message>
        <source>No network now.</source>
        <translation>Pas de réseau pour l&apos;instant.</translation>
    </message>
    <message>
        <source>This network is paid for by what it carries.</source>
        <translation>Ce réseau est facturé au volume.</translation>
    </message>
    <message>
        <source>Record or signature</source>
        <translation>Procès-verbal ou signature</translation>
    </message>
    <message>
        <source>List of who may sign</source>
        <translation>Liste de qui peut signer</translation>
    </message>
    <message>
        <source>Photo, log or other evidence</source>
        <translation>Photo, journal ou autre preuve</translation>
    </message>
    <message>
        <source>A person&apos;s name or photo</source>
        <translation>Nom ou photo d&apos;une personne</translation>
    </message>
    <message>
        <source>%1 of %2 parcels sent, %3 received; %4 records new here; evidence: %5 sent, %6 received</source>
        <translation>%1 paquets sur %2 envoyés, %3 reçus ; %4 procès-verbaux nouveaux ici ; preuves : %5 envoyées, %6 reçues</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Yard</name>
    <message>
        <source>on their own phone</source>
        <translation>sur son propre téléphone</translation>
    </message>
</context>
</TS>
