<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="ar">
<context>
    <name>AdmitPage</name>
    <message>
        <source>Add somebody</source>
        <translation>أضف أحدًا</translation>
    </message>
    <message>
        <source>On their own phone they press &quot;Join a yard&quot; at the first start. Hold this phone over the code that it then shows.</source>
        <translation>على هاتفه يضغط «الانضمام إلى ساحة» عند أول تشغيل. أمسك هذا الهاتف فوق الرمز الذي يعرضه حينئذ.</translation>
    </message>
    <message>
        <source>A key on the list counts as that person&apos;s signature.</source>
        <translation>المفتاح المدرج في القائمة يُعدّ توقيع ذلك الشخص.</translation>
    </message>
    <message>
        <source>Whoever holds it confirms in their name that a machine is safe. If it is somebody else, people can be hurt.</source>
        <translation>من يملكه يؤكد باسمه أن الآلة آمنة. فإن كان غيره فقد يُصاب الناس.</translation>
    </message>
    <message>
        <source>Let in only who stands before you. Compare name and key on both screens.</source>
        <translation>لا تقبل إلا من يقف أمامك. قارن الاسم والمفتاح على الشاشتين.</translation>
    </message>
    <message>
        <source>%1 is on the list. Let their phone read this code.</source>
        <translation>%1 في القائمة. دع الهاتف الآخر يقرأ هذا الرمز.</translation>
    </message>
    <message>
        <source>Code that lets the other phone in</source>
        <translation>رمز قبول الهاتف الآخر</translation>
    </message>
    <message>
        <source>The yard&apos;s lists do not fit in the code. Their phone can sign once it has them: with the next exchange, or as a file.</source>
        <translation>لا يتسع الرمز لقوائم الساحة. يستطيع الهاتف الآخر التوقيع متى وصلته: مع التبادل التالي أو في ملف.</translation>
    </message>
    <message>
        <source>Their key begins with %1</source>
        <translation>يبدأ مفتاحه بـ %1</translation>
    </message>
    <message>
        <source>Asked at %1 by the clock of that phone</source>
        <translation>طُلب في %1 بساعة ذلك الهاتف</translation>
    </message>
    <message>
        <source>They sign as</source>
        <translation>يوقّع بصفة</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>عبارة مرور الساحة</translation>
    </message>
    <message>
        <source>Let them in</source>
        <translation>اقبله</translation>
    </message>
    <message>
        <source>No, it is somebody else</source>
        <translation>لا، هو شخص آخر</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>قرأه الهاتف الآخر</translation>
    </message>
</context>
<context>
    <name>AnswerPage</name>
    <message>
        <source>Confirm for another phone</source>
        <translation>أكِّد لهاتف آخر</translation>
    </message>
    <message>
        <source>On the other phone somebody presses &quot;Ask another phone&quot; at the step that you are to confirm. Hold this phone over its code.</source>
        <translation>على الهاتف الآخر يضغط أحدهم «اسأل هاتفًا آخر» عند الخطوة التي عليك تأكيدها. أمسك هذا الهاتف فوق رمزه.</translation>
    </message>
    <message>
        <source>Others go to work by what you confirm.</source>
        <translation>يعمل آخرون بناءً على ما تؤكده.</translation>
    </message>
    <message>
        <source>If it is not so, the machine can start or the boom can come down on them.</source>
        <translation>إن لم يكن كذلك فقد تشتغل الآلة أو تنزل ذراع الرفع عليهم.</translation>
    </message>
    <message>
        <source>Go to the machine and look for yourself. Confirm only what you have seen. Local rules and the maker&apos;s manual come first.</source>
        <translation>اذهب إلى الآلة وانظر بنفسك. لا تؤكد إلا ما رأيته. القواعد المحلية ودليل الصانع أولًا.</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 مع %2</translation>
    </message>
    <message>
        <source>%1 asks, at %2 by the clock of that phone</source>
        <translation>يسأل %1، في %2 بساعة ذلك الهاتف</translation>
    </message>
    <message>
        <source>Said there just before:</source>
        <translation>قيل هناك قبل ذلك مباشرة:</translation>
    </message>
    <message>
        <source>You can&apos;t answer this. It is for: %1</source>
        <translation>لا يمكنك الإجابة عن هذا. السؤال موجّه إلى: %1</translation>
    </message>
    <message>
        <source>Your answer: yes. Let the other phone read this code.</source>
        <translation>جوابك: نعم. دع الهاتف الآخر يقرأ هذا الرمز.</translation>
    </message>
    <message>
        <source>Your answer: no. Let the other phone read this code.</source>
        <translation>جوابك: لا. دع الهاتف الآخر يقرأ هذا الرمز.</translation>
    </message>
    <message>
        <source>Code of your answer</source>
        <translation>رمز جوابك</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>أؤكد ذلك</translation>
    </message>
    <message>
        <source>Sealed with your key: %1</source>
        <translation>يُختم بمفتاحك: %1</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>لا، ليس كذلك</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>قرأه الهاتف الآخر</translation>
    </message>
</context>
<context>
    <name>AskPage</name>
    <message>
        <source>Ask another phone</source>
        <translation>اسأل هاتفًا آخر</translation>
    </message>
    <message>
        <source>1. The second person opens &quot;Confirm for another phone&quot; on the first page of their own phone and reads this code. It holds for 15 minutes.</source>
        <translation>1. يفتح الشخص الثاني «أكِّد لهاتف آخر» في الصفحة الأولى من هاتفه هو ويقرأ هذا الرمز. يصلح الرمز 15 دقيقة.</translation>
    </message>
    <message>
        <source>Code that asks for the confirmation</source>
        <translation>الرمز الذي يطلب التأكيد</translation>
    </message>
    <message>
        <source>2. They look for themself and answer. Then read the code that their phone shows.</source>
        <translation>2. ينظر بنفسه ويجيب. ثم اقرأ الرمز الذي يعرضه هاتفه.</translation>
    </message>
    <message>
        <source>Hold this phone over the other one, so that the whole code of the answer is in the picture.</source>
        <translation>أمسك هذا الهاتف فوق الآخر بحيث يظهر رمز الجواب كله في الصورة.</translation>
    </message>
    <message>
        <source>Read their answer</source>
        <translation>اقرأ جوابه</translation>
    </message>
    <message>
        <source>Ask again with a new code</source>
        <translation>اسأل من جديد برمز جديد</translation>
    </message>
</context>
<context>
    <name>AttachmentEditPage</name>
    <message>
        <source>Number or name of the attachment</source>
        <translation>رقم الملحق أو اسمه</translation>
    </message>
    <message>
        <source>Quick coupler, kg</source>
        <translation>القارنة السريعة، kg</translation>
    </message>
    <message>
        <source>Bucket, kg</source>
        <translation>الدلو، kg</translation>
    </message>
    <message>
        <source>Load&apos;s centre along the bucket floor from the hinge pin, mm</source>
        <translation>مركز الحمل على امتداد أرضية الدلو من مسمار المفصل، mm</translation>
    </message>
    <message>
        <source>Load&apos;s centre square to the floor, mm</source>
        <translation>مركز الحمل عموديًا على الأرضية، mm</translation>
    </message>
    <message>
        <source>Heel along the floor, mm</source>
        <translation>الكعب على امتداد الأرضية، mm</translation>
    </message>
    <message>
        <source>Heel square to the floor, mm</source>
        <translation>الكعب عموديًا على الأرضية، mm</translation>
    </message>
    <message>
        <source>Cutting edge along the floor, mm</source>
        <translation>حد القطع على امتداد الأرضية، mm</translation>
    </message>
    <message>
        <source>Cutting edge square to the floor, mm</source>
        <translation>حد القطع عموديًا على الأرضية، mm</translation>
    </message>
    <message>
        <source>Upper stop: cutting edge above ground, mm</source>
        <translation>نقطة التوقف العليا: ارتفاع حد القطع عن الأرض، mm</translation>
    </message>
    <message>
        <source>Lower stop: cutting edge above ground, mm</source>
        <translation>نقطة التوقف السفلى: ارتفاع حد القطع عن الأرض، mm</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>تعديل %1</translation>
    </message>
    <message>
        <source>New attachment</source>
        <translation>ملحق جديد</translation>
    </message>
    <message>
        <source>What is not known stays empty. Without masses and a load centre a known mass is needed to calibrate.</source>
        <translation>ما لا يُعرف يبقى فارغًا. من دون الكتل ومركز الحمل تحتاج المعايرة إلى كتلة معلومة.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>احفظ</translation>
    </message>
</context>
<context>
    <name>AttachmentsPage</name>
    <message>
        <source>Attachments</source>
        <translation>الملحقات</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>لا شيء بعد.</translation>
    </message>
    <message>
        <source>Add an attachment</source>
        <translation>أضف ملحقًا</translation>
    </message>
</context>
<context>
    <name>BeginPage</name>
    <message>
        <source>Begin a job on %1</source>
        <translation>ابدأ مهمة على %1</translation>
    </message>
    <message>
        <source>Must have been done before: %1</source>
        <translation>يجب أن يكون قد نُفّذ قبلها: %1</translation>
    </message>
    <message>
        <source>Have at hand: %1</source>
        <translation>اجعل في متناول يدك: %1</translation>
    </message>
    <message>
        <source>Way</source>
        <translation>الطريقة</translation>
    </message>
    <message>
        <source>Fitted attachment</source>
        <translation>الملحق المركَّب</translation>
    </message>
    <message>
        <source>If nobody is here to confirm what a second person should</source>
        <translation>إن لم يكن هنا أحد يؤكد ما ينبغي أن يؤكده شخص ثانٍ</translation>
    </message>
    <message>
        <source>Wait for somebody</source>
        <translation>انتظار شخص</translation>
    </message>
    <message>
        <source>A look from afar, by photo</source>
        <translation>نظرة من بعيد، إلى صورة</translation>
    </message>
    <message>
        <source>Go on, marked as unconfirmed</source>
        <translation>المتابعة مع علامة «غير مؤكَّد»</translation>
    </message>
    <message>
        <source>(empty where the attachment says it)</source>
        <translation>(فارغ حيث يذكره الملحق)</translation>
    </message>
    <message>
        <source>Rated payload</source>
        <translation>الحمولة الاسمية</translation>
    </message>
    <message>
        <source>Wanted upper stop, cutting edge above ground</source>
        <translation>نقطة التوقف العليا المطلوبة، ارتفاع حد القطع عن الأرض</translation>
    </message>
    <message>
        <source>Test mass</source>
        <translation>كتلة الاختبار</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>ابدأ</translation>
    </message>
    <message>
        <source>Another procedure</source>
        <translation>إجراء آخر</translation>
    </message>
    <message>
        <source>What is to be done?</source>
        <translation>ما المطلوب عمله؟</translation>
    </message>
</context>
<context>
    <name>BrokenPage</name>
    <message>
        <source>The yard can&apos;t be opened</source>
        <translation>تعذّر فتح الساحة</translation>
    </message>
    <message>
        <source>Nothing was changed. Keep the folder as it is, and restore a backup beside it if you have one.</source>
        <translation>لم يتغير شيء. أبقِ المجلد كما هو، واستعد نسخة احتياطية إلى جانبه إن كانت لديك.</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>حاول من جديد</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>افتح ساحة أخرى</translation>
    </message>
</context>
<context>
    <name>CameraView</name>
    <message>
        <source>Release the shutter</source>
        <translation>التقط الصورة</translation>
    </message>
</context>
<context>
    <name>CautionStep</name>
    <message>
        <source>I have read this</source>
        <translation>قرأت هذا</translation>
    </message>
</context>
<context>
    <name>CertificatePage</name>
    <message>
        <source>Calibration certificate</source>
        <translation>شهادة معايرة</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>اللغة</translation>
    </message>
    <message>
        <source>What you state here is not part of the sealed record, and the certificate says so. It may stay empty.</source>
        <translation>ما تذكره هنا ليس جزءًا من السجل المختوم، والشهادة تقول ذلك. ويجوز أن يبقى فارغًا.</translation>
    </message>
    <message>
        <source>Calibrated by: name and address</source>
        <translation>أجرى المعايرة: الاسم والعنوان</translation>
    </message>
    <message>
        <source>For whom: name and address</source>
        <translation>لصالح مَن: الاسم والعنوان</translation>
    </message>
    <message>
        <source>Where it was done</source>
        <translation>مكان التنفيذ</translation>
    </message>
    <message>
        <source>Country: two capital letters</source>
        <translation>البلد: حرفان كبيران</translation>
    </message>
    <message>
        <source>Two capital letters (ISO 3166-1), as in DE</source>
        <translation>حرفان كبيران (ISO 3166-1) مثل DE</translation>
    </message>
    <message>
        <source>Certificates of the test masses or of the truck scale</source>
        <translation>شهادات كتل الاختبار أو ميزان الشاحنات</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>حجم الورق</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>احفظ بصيغة PDF</translation>
    </message>
    <message>
        <source>Save as a web page</source>
        <translation>حفظ كصفحة ويب</translation>
    </message>
    <message>
        <source>One HTML file that needs nothing beside it</source>
        <translation>ملف HTML واحد لا يحتاج إلى شيء معه</translation>
    </message>
    <message>
        <source>Save for programs</source>
        <translation>حفظ للبرامج</translation>
    </message>
    <message>
        <source>A Digital Calibration Certificate (DCC, XML)</source>
        <translation>شهادة معايرة رقمية (DCC، XML)</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>حُفظ: %1</translation>
    </message>
</context>
<context>
    <name>ChartsPage</name>
    <message>
        <source>Charts</source>
        <translation>الرسوم البيانية</translation>
    </message>
    <message>
        <source>Nothing was logged or proved that a chart could show.</source>
        <translation>لم يُسجَّل ولم يُثبَت شيء يمكن أن يعرضه رسم بياني.</translation>
    </message>
</context>
<context>
    <name>ComparePage</name>
    <message>
        <source>Check-out and return compared</source>
        <translation>مقارنة التسليم والإرجاع</translation>
    </message>
    <message>
        <source>Nothing differs that was read or answered.</source>
        <translation>لا فرق في شيء مما قُرئ أو أُجيب عنه.</translation>
    </message>
    <message>
        <source>The record of the check-out</source>
        <translation>سجل التسليم</translation>
    </message>
    <message>
        <source>The record of the return</source>
        <translation>سجل الإرجاع</translation>
    </message>
</context>
<context>
    <name>ConfirmStep</name>
    <message>
        <source>Yes</source>
        <translation>نعم</translation>
    </message>
    <message>
        <source>No</source>
        <translation>لا</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>أؤكد ذلك</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>لا، ليس كذلك</translation>
    </message>
    <message>
        <source>Nobody is here to confirm</source>
        <translation>لا أحد هنا ليؤكد</translation>
    </message>
    <message>
        <source>The record will say so</source>
        <translation>سيذكر السجل ذلك</translation>
    </message>
    <message>
        <source>A second person looks for themself and confirms: %1</source>
        <translation>شخص ثانٍ ينظر بنفسه ويؤكد: %1</translation>
    </message>
    <message>
        <source>Their passphrase</source>
        <translation>عبارة مروره</translation>
    </message>
    <message>
        <source>Ask another phone</source>
        <translation>اسأل هاتفًا آخر</translation>
    </message>
    <message>
        <source>By a code, from screen to camera; no network is needed</source>
        <translation>برمز من الشاشة إلى الكاميرا، دون شبكة</translation>
    </message>
    <message>
        <source>No such person has a key on this phone. Ask another phone, or add one under People.</source>
        <translation>لا أحد بهذا الدور له مفتاح على هذا الهاتف. اسأل هاتفًا آخر، أو أضف شخصًا من صفحة الأشخاص.</translation>
    </message>
</context>
<context>
    <name>DisputePage</name>
    <message>
        <source>What was this scale worth?</source>
        <translation>كم كان هذا الميزان جديرًا بالثقة؟</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 مع %2</translation>
    </message>
    <message>
        <source>Day of the load, as 2026-05-04</source>
        <translation>يوم الحمولة، مثل ⁦2026-05-04⁩</translation>
    </message>
    <message>
        <source>Year, month and day, as 2026-05-04</source>
        <translation>السنة والشهر واليوم، مثل ⁦2026-05-04⁩</translation>
    </message>
    <message>
        <source>Tell</source>
        <translation>أخبرني</translation>
    </message>
    <message>
        <source>Save it with the records behind it</source>
        <translation>احفظه مع السجلات التي يستند إليها</translation>
    </message>
    <message>
        <source>A folder that any program for these records can verify</source>
        <translation>مجلد يستطيع أي برنامج لهذه السجلات أن يتحقق منه</translation>
    </message>
</context>
<context>
    <name>DoubtStep</name>
    <message>
        <source>I meant %1</source>
        <translation>قصدت %1</translation>
    </message>
    <message>
        <source>Type it again</source>
        <translation>اكتبها من جديد</translation>
    </message>
    <message>
        <source>It is %1</source>
        <translation>هي %1 فعلًا</translation>
    </message>
    <message>
        <source>The record will say that it was doubted and confirmed</source>
        <translation>سيذكر السجل أن القيمة كانت محل شك ثم أُكّدت</translation>
    </message>
    <message>
        <source>%1: can that be?</source>
        <translation>%1: هل يمكن ذلك؟</translation>
    </message>
    <message>
        <source>Usual is between %1 and %2. Look for a slipped decimal mark or another unit.</source>
        <translation>المعتاد بين %1 و %2. ابحث عن علامة عشرية في غير موضعها أو عن وحدة أخرى.</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>أدخل %1 %2</translation>
    </message>
</context>
<context>
    <name>EndStep</name>
    <message>
        <source>Seal the record</source>
        <translation>اختم السجل</translation>
    </message>
    <message>
        <source>Show the record</source>
        <translation>اعرض السجل</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>تمت</translation>
    </message>
    <message>
        <source>Failed: do not use this scale</source>
        <translation>فشل: لا تستخدم هذا الميزان</translation>
    </message>
    <message>
        <source>Given up: do not use this scale</source>
        <translation>جرى التخلي عنها: لا تستخدم هذا الميزان</translation>
    </message>
    <message>
        <source>Sealed with your key. Nobody can change it without it showing.</source>
        <translation>مختوم بمفتاحك. لا يستطيع أحد تعديله دون أن يظهر ذلك.</translation>
    </message>
    <message>
        <source>Record %1</source>
        <translation>السجل %1</translation>
    </message>
</context>
<context>
    <name>EventPage</name>
    <message>
        <source>What happened to %1?</source>
        <translation>ماذا حدث لـ %1؟</translation>
    </message>
    <message>
        <source>It is sealed with your key as a record of its own. From then on the scale is due, until it is proved again.</source>
        <translation>يُختم بمفتاحك سجلًّا مستقلًّا. ومن ذلك الحين يكون الميزان مستحقًّا للإثبات حتى تثبت صحته من جديد.</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>ماذا حدث</translation>
    </message>
    <message>
        <source>With which attachment</source>
        <translation>مع أي ملحق</translation>
    </message>
    <message>
        <source>With any of them</source>
        <translation>مع أيّ منها</translation>
    </message>
    <message>
        <source>In your words (may stay empty)</source>
        <translation>بكلماتك (يجوز تركه فارغًا)</translation>
    </message>
    <message>
        <source>Seal it</source>
        <translation>اختمه</translation>
    </message>
</context>
<context>
    <name>EvidenceStep</name>
    <message>
        <source>Take a photo</source>
        <translation>التقط صورة</translation>
    </message>
    <message>
        <source>Use a practice picture</source>
        <translation>استخدم صورة تدريب</translation>
    </message>
    <message>
        <source>Invented, and marked so</source>
        <translation>وهمية، ومعلَّمة بذلك</translation>
    </message>
    <message>
        <source>Choose a picture</source>
        <translation>اختر صورة</translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation>اختر ملفًا</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>تخطَّ هذا</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>صور (%1)</translation>
    </message>
    <message>
        <source>All files (%1)</source>
        <translation>كل الملفات (%1)</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>لا يسمح الهاتف للتطبيق باستخدام الكاميرا. اسمح بذلك في إعدادات الهاتف، أو اختر صورة.</translation>
    </message>
</context>
<context>
    <name>FeedPage</name>
    <message>
        <source>Live readings</source>
        <translation>القراءات المباشرة</translation>
    </message>
    <message>
        <source>Readings come as lines of a lift log (CSV): from a sensor gateway over the network, from a file that is played back, or from the simulated loader for practice.</source>
        <translation>تأتي القراءات كأسطر من تسجيل رفع (CSV): من بوابة مستشعرات عبر الشبكة، أو من ملف يُعاد تشغيله، أو من لودر المحاكاة للتدريب.</translation>
    </message>
    <message>
        <source>None</source>
        <translation>لا شيء</translation>
    </message>
    <message>
        <source>Simulated loader</source>
        <translation>لودر المحاكاة</translation>
    </message>
    <message>
        <source>Invented; for practice units</source>
        <translation>وهمي؛ لمعدّات التدريب</translation>
    </message>
    <message>
        <source>A file, played back</source>
        <translation>ملف يُعاد تشغيله</translation>
    </message>
    <message>
        <source>Sensor gateway (TCP)</source>
        <translation>بوابة مستشعرات (TCP)</translation>
    </message>
    <message>
        <source>Address of the gateway, host:port</source>
        <translation>عنوان البوابة، host:port</translation>
    </message>
    <message>
        <source>%1 readings a second</source>
        <translation>القراءات في الثانية: %1</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>تسجيلات رفع (%1)</translation>
    </message>
    <message>
        <source>Practise what goes wrong</source>
        <translation>تدرّب على ما قد يتعطل</translation>
    </message>
    <message>
        <source>The simulated loader can misbehave, from its next movement on, as if it were so on the machine. What the job then says and asks for is part of the practice.</source>
        <translation>يمكن أن يسيء لودر المحاكاة التصرف ابتداءً من حركته التالية، كما لو كان ذلك على الآلة. وما تقوله المهمة وتطلبه عندئذ جزء من التدريب.</translation>
    </message>
    <message>
        <source>The loader misbehaves</source>
        <translation>اللودر يسيء التصرف</translation>
    </message>
    <message>
        <source>No, all is well</source>
        <translation>لا، كل شيء على ما يرام</translation>
    </message>
    <message>
        <source>All is well</source>
        <translation>كل شيء على ما يرام</translation>
    </message>
    <message>
        <source>Cut the readings off for 10 seconds</source>
        <translation>اقطع القراءات لمدة 10 ثوانٍ</translation>
    </message>
    <message>
        <source>As when a plug comes off; they come back by themselves</source>
        <translation>كما حين ينفصل قابس؛ وتعود من تلقاء نفسها</translation>
    </message>
</context>
<context>
    <name>FirstStartPage</name>
    <message>
        <source>Calibrates the scale and the automatic stops of a wheel loader, step by step, with no signal needed, and keeps a signed record.</source>
        <translation>يعاير ميزان لودر بعجلات ونقاط توقفه الآلي خطوة بخطوة، دون حاجة إلى شبكة، ويحفظ سجلًا موقّعًا.</translation>
    </message>
    <message>
        <source>The law and the rules of the site, the machine maker&apos;s manual and licensed practice come first.</source>
        <translation>القانون وقواعد الموقع، ودليل صانع الآلة، والممارسة المرخَّصة تتقدم على هذا التطبيق.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>اللغة</translation>
    </message>
    <message>
        <source>Making the demo yard: %1 %</source>
        <translation>إنشاء الساحة التجريبية: %1 %</translation>
    </message>
    <message>
        <source>Make my yard</source>
        <translation>أنشئ ساحتي</translation>
    </message>
    <message>
        <source>Your key and the yard&apos;s list of who may sign</source>
        <translation>مفتاحك وقائمة الساحة بمن يجوز له التوقيع</translation>
    </message>
    <message>
        <source>Look round the demo yard</source>
        <translation>تجوّل في الساحة التجريبية</translation>
    </message>
    <message>
        <source>Invented machines, people and records, to practise on</source>
        <translation>آلات وأشخاص وسجلات وهمية، للتدريب عليها</translation>
    </message>
    <message>
        <source>Join a yard</source>
        <translation>الانضمام إلى ساحة</translation>
    </message>
    <message>
        <source>It is on another phone, whose owner lets you in</source>
        <translation>هي على هاتف آخر يقبلك صاحبه</translation>
    </message>
</context>
<context>
    <name>Flash</name>
    <message>
        <source>Once more</source>
        <translation>مرة أخرى</translation>
    </message>
    <message>
        <source>Pass complete</source>
        <translation>اكتملت التمريرة</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>ثبتت الوضعية</translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Back</source>
        <translation>رجوع</translation>
    </message>
    <message>
        <source>Working</source>
        <translation>جارٍ العمل</translation>
    </message>
</context>
<context>
    <name>HistoryChart</name>
    <message>
        <source>It may lie between %1 and %2.</source>
        <translation>يجوز أن يقع بين %1 و%2.</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) from %1 to %2, between %3 and %4, the last %5.</source>
        <translation>
            <numerusform>لا قراءات (%n) من %1 إلى %2، بين %3 و%4، آخرها %5.</numerusform>
            <numerusform>قراءة واحدة من %1 إلى %2، بين %3 و%4، آخرها %5.</numerusform>
            <numerusform>قراءتان من %1 إلى %2، بين %3 و%4، آخرهما %5.</numerusform>
            <numerusform>%n قراءات من %1 إلى %2، بين %3 و%4، آخرها %5.</numerusform>
            <numerusform>%n قراءة من %1 إلى %2، بين %3 و%4، آخرها %5.</numerusform>
            <numerusform>%n قراءة من %1 إلى %2، بين %3 و%4، آخرها %5.</numerusform>
        </translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>المقيس</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>التفاوت المسموح</translation>
    </message>
    <message>
        <source>Taught anew</source>
        <translation>أُعيد التعليم</translation>
    </message>
</context>
<context>
    <name>HistoryPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 مع %2</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>لا شيء بعد.</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>الصفر</translation>
    </message>
    <message>
        <source>What it showed with an empty bucket, as found, in %1</source>
        <translation>ما عرضه والدلو فارغ، كما وُجد، بوحدة %1</translation>
    </message>
    <message>
        <source>Span</source>
        <translation>المدى</translation>
    </message>
    <message>
        <source>What it showed of a known mass less its zero, in % of that mass</source>
        <translation>ما عرضه لكتلة معروفة ناقص صفره، بنسبة % من تلك الكتلة</translation>
    </message>
    <message>
        <source>Errors of the proofs</source>
        <translation>أخطاء إثباتات الصحة</translation>
    </message>
    <message>
        <source>In % of the known mass</source>
        <translation>بنسبة % من الكتلة المعروفة</translation>
    </message>
</context>
<context>
    <name>HoldStep</name>
    <message>
        <source>It was disturbed: begin again</source>
        <translation>اختلّ الانتظار: ابدأ من جديد</translation>
    </message>
    <message>
        <source>Begin: %1</source>
        <translation>ابدأ: %1</translation>
    </message>
    <message numerus="yes">
        <source>%n second(s)</source>
        <translation>
            <numerusform>%n ثانية</numerusform>
            <numerusform>%n ثانية</numerusform>
            <numerusform>%n ثانية</numerusform>
            <numerusform>%n ثوانٍ</numerusform>
            <numerusform>%n ثانية</numerusform>
            <numerusform>%n ثانية</numerusform>
        </translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>فشل</translation>
    </message>
</context>
<context>
    <name>HomePage</name>
    <message>
        <source>Demo yard (invented)</source>
        <translation>الساحة التجريبية (وهمية)</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1، %2</translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) must not be used</source>
        <translation>
            <numerusform>%n معدّة يجب ألا تُستخدم</numerusform>
            <numerusform>%n معدّة يجب ألا تُستخدم</numerusform>
            <numerusform>معدّتان (%n) يجب ألا تُستخدما</numerusform>
            <numerusform>%n معدّات يجب ألا تُستخدم</numerusform>
            <numerusform>%n معدّة يجب ألا تُستخدم</numerusform>
            <numerusform>%n معدّة يجب ألا تُستخدم</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) due now or soon</source>
        <translation>
            <numerusform>%n معدّة مستحقة الآن أو قريبًا</numerusform>
            <numerusform>%n معدّة مستحقة الآن أو قريبًا</numerusform>
            <numerusform>معدّتان (%n) مستحقتان الآن أو قريبًا</numerusform>
            <numerusform>%n معدّات مستحقة الآن أو قريبًا</numerusform>
            <numerusform>%n معدّة مستحقة الآن أو قريبًا</numerusform>
            <numerusform>%n معدّة مستحقة الآن أو قريبًا</numerusform>
        </translation>
    </message>
    <message>
        <source>Waiting for a second person</source>
        <translation>بانتظار شخص ثانٍ</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>لا شيء ينتظر.</translation>
    </message>
    <message>
        <source>%1, since %2</source>
        <translation>%1، منذ %2</translation>
    </message>
    <message>
        <source>Confirmed lately</source>
        <translation>أُكّد حديثًا</translation>
    </message>
    <message>
        <source>Out on hire</source>
        <translation>المؤجَّرة حاليًا</translation>
    </message>
    <message>
        <source>No unit is out.</source>
        <translation>لا معدّة مؤجَّرة حاليًا.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>منذ %1</translation>
    </message>
    <message>
        <source>Go on with</source>
        <translation>للمتابعة</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>المعدّات</translation>
    </message>
    <message>
        <source>No unit yet. Add the first one below.</source>
        <translation>لا معدّة بعد. أضف الأولى أدناه.</translation>
    </message>
    <message>
        <source>locked out</source>
        <translation>عزل وإقفال</translation>
    </message>
    <message>
        <source>Add a unit</source>
        <translation>أضف معدّة</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>الإعدادات</translation>
    </message>
    <message>
        <source>Confirm for another phone</source>
        <translation>أكِّد لهاتف آخر</translation>
    </message>
    <message>
        <source>Reads the code by which it asks</source>
        <translation>يقرأ الرمز الذي يسأل به</translation>
    </message>
</context>
<context>
    <name>JobMorePage</name>
    <message>
        <source>This job</source>
        <translation>هذه المهمة</translation>
    </message>
    <message>
        <source>Go on later</source>
        <translation>تابع لاحقًا</translation>
    </message>
    <message>
        <source>Nothing is lost; it opens again at this step</source>
        <translation>لا يضيع شيء؛ تُفتح من جديد عند هذه الخطوة</translation>
    </message>
    <message>
        <source>Give the job up</source>
        <translation>تخلَّ عن المهمة</translation>
    </message>
    <message>
        <source>The job then ends as given up: the machine is made safe, and its scale is tagged not to be used.</source>
        <translation>عندئذ تنتهي المهمة على أنه جرى التخلي عنها: تُؤمَّن الآلة، وتُعلَّق على ميزانها بطاقة تحذير بألا يُستخدم.</translation>
    </message>
    <message>
        <source>Hold to give up</source>
        <translation>اضغط مطوّلًا للتخلي</translation>
    </message>
    <message>
        <source>Keep on working</source>
        <translation>واصل العمل</translation>
    </message>
    <message>
        <source>Done so far, the newest first</source>
        <translation>ما نُفّذ حتى الآن، الأحدث أولًا</translation>
    </message>
    <message>
        <source>(does not count)</source>
        <translation>(لا يُحتسب)</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>القراءات المباشرة</translation>
    </message>
    <message>
        <source>None are open</source>
        <translation>لا توجد قراءات مفتوحة</translation>
    </message>
    <message>
        <source>They are coming</source>
        <translation>إنها تصل</translation>
    </message>
    <message>
        <source>They have stopped</source>
        <translation>لقد توقفت</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>الرسوم البيانية</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>التمريرات، ما تتركه المواءمة، أخطاء إثبات الصحة</translation>
    </message>
</context>
<context>
    <name>JobPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 مع %2</translation>
    </message>
    <message>
        <source>practice, invented</source>
        <translation>تدريب، وهمي</translation>
    </message>
    <message>
        <source>Step %1 of %2</source>
        <translation>الخطوة %1 من %2</translation>
    </message>
    <message>
        <source>The job has stopped. Make the machine safe first.</source>
        <translation>توقفت المهمة. أمِّن الآلة أولًا.</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>لم تُجتز</translation>
    </message>
    <message>
        <source>It was: %1</source>
        <translation>كان: %1</translation>
    </message>
    <message>
        <source>Do this now:</source>
        <translation>افعل هذا الآن:</translation>
    </message>
    <message>
        <source>Do the last step again</source>
        <translation>أعد الخطوة الأخيرة</translation>
    </message>
    <message>
        <source>What was said stays on the record and no longer counts</source>
        <translation>ما قيل يبقى في السجل ولم يعد يُحتسب</translation>
    </message>
    <message>
        <source>All that was done so far, giving up, going on later</source>
        <translation>كل ما نُفّذ حتى الآن، والتخلي، والمتابعة لاحقًا</translation>
    </message>
    <message>
        <source>What the survey found</source>
        <translation>ما وجده المسح</translation>
    </message>
</context>
<context>
    <name>JoinPage</name>
    <message>
        <source>Join a yard</source>
        <translation>الانضمام إلى ساحة</translation>
    </message>
    <message>
        <source>The yard is on another phone. This one makes a key of your own, and asks that phone to let you in.</source>
        <translation>الساحة على هاتف آخر. ينشئ هذا الهاتف مفتاحًا لك ويطلب من ذاك أن يقبلك.</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>اسمك</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>عبارة المرور: 12 حرفًا أو أكثر، والأفضل بضع كلمات</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>عبارة المرور نفسها مرة أخرى</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>ليست هي نفسها.</translation>
    </message>
    <message>
        <source>It locks your signing key on this phone. Nobody can recover it: if it is lost, you join again with a new key.</source>
        <translation>تقفل مفتاح توقيعك على هذا الهاتف. لا يستطيع أحد استعادتها: إن ضاعت فانضمّ من جديد بمفتاح جديد.</translation>
    </message>
    <message>
        <source>Make my key</source>
        <translation>أنشئ مفتاحي</translation>
    </message>
</context>
<context>
    <name>JoiningPage</name>
    <message>
        <source>Join a yard</source>
        <translation>الانضمام إلى ساحة</translation>
    </message>
    <message>
        <source>Code that asks to be let in</source>
        <translation>رمز يطلب القبول</translation>
    </message>
    <message>
        <source>Your key begins with %1</source>
        <translation>يبدأ مفتاحك بـ %1</translation>
    </message>
    <message>
        <source>1. On the phone that has the yard&apos;s key, open Settings, People, &quot;Add somebody on their own phone&quot;, and read this code. It holds for a day.</source>
        <translation>1. على الهاتف الذي فيه مفتاح الساحة افتح الإعدادات، ثم الأشخاص، ثم «أضف أحدًا على هاتفه»، واقرأ هذا الرمز. يسري يومًا واحدًا.</translation>
    </message>
    <message>
        <source>2. Compare on both screens how the key begins. Then read the code that the other phone shows.</source>
        <translation>2. قارن بداية المفتاح على الشاشتين. ثم اقرأ الرمز الذي يعرضه الهاتف الآخر.</translation>
    </message>
    <message>
        <source>Hold this phone over the yard&apos;s phone, so that the whole code is in the picture.</source>
        <translation>أمسك هذا الهاتف فوق هاتف الساحة بحيث يظهر الرمز كله في الصورة.</translation>
    </message>
    <message>
        <source>Your passphrase, to make a new code</source>
        <translation>عبارة مرورك، لإنشاء رمز جديد</translation>
    </message>
    <message>
        <source>Make a new code</source>
        <translation>أنشئ رمزًا جديدًا</translation>
    </message>
    <message>
        <source>Make a yard of my own instead</source>
        <translation>أنشئ ساحة لي بدلًا من ذلك</translation>
    </message>
    <message>
        <source>The key that was made here is then removed. If it has been let in already, have it revoked.</source>
        <translation>يُحذف عندئذ المفتاح الذي أُنشئ هنا. إن كان قد قُبل فاطلب إبطاله.</translation>
    </message>
    <message>
        <source>Hold to remove the key</source>
        <translation>اضغط مطوّلًا لحذف المفتاح</translation>
    </message>
    <message>
        <source>Keep the key</source>
        <translation>احتفظ بالمفتاح</translation>
    </message>
    <message>
        <source>Read the yard&apos;s code</source>
        <translation>اقرأ رمز الساحة</translation>
    </message>
    <message>
        <source>Make the code</source>
        <translation>أنشئ الرمز</translation>
    </message>
    <message>
        <source>Show my code again</source>
        <translation>اعرض رمزي من جديد</translation>
    </message>
</context>
<context>
    <name>Keypad</name>
    <message>
        <source>Delete the last digit</source>
        <translation>احذف آخر رقم</translation>
    </message>
    <message>
        <source>Plus or minus</source>
        <translation>زائد أو ناقص</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>العلامة العشرية</translation>
    </message>
</context>
<context>
    <name>KeysLostPage</name>
    <message>
        <source>The keys are not on this phone</source>
        <translation>المفاتيح ليست على هذا الهاتف</translation>
    </message>
    <message>
        <source>Units, jobs and records of the yard are here, but no key to sign with. So it is after a phone was restored from a backup: backups hold no keys, so that nobody else can sign with yours.</source>
        <translation>المعدات والمهام والسجلات موجودة هنا، ولكن لا مفتاح للتوقيع. هكذا يكون الحال بعد استعادة هاتف من نسخة احتياطية: فالنسخ لا تحتوي على مفاتيح كي لا يوقّع أحد غيرك بمفاتيحك.</translation>
    </message>
    <message>
        <source>Nothing is lost: what was signed stays signed, and can be checked. With new keys you go on. The yard&apos;s list of who may sign then begins anew, with all who were on it, and other phones of the yard must accept it.</source>
        <translation>لم يضِع شيء: ما وُقّع يبقى موقّعًا ويمكن التحقق منه. تتابع العمل بمفاتيح جديدة. وعندئذ تبدأ قائمة الساحة لمن يحق لهم التوقيع من جديد، وفيها كل من كانوا عليها، ويجب أن تقبلها هواتف الساحة الأخرى.</translation>
    </message>
    <message>
        <source>If the old phone was lost or stolen, its key can still sign. Have it revoked.</source>
        <translation>إذا فُقد الهاتف القديم أو سُرق فما زال مفتاحه قادرًا على التوقيع. اطلب إبطاله.</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>أنشئ مفاتيح جديدة</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>افتح ساحة أخرى</translation>
    </message>
</context>
<context>
    <name>LevelPage</name>
    <message>
        <source>The phone as a level</source>
        <translation>الهاتف كمقياس ميل</translation>
    </message>
    <message>
        <source>A raised boom can come down.</source>
        <translation>ذراع الرفع المرفوعة قد تهبط.</translation>
    </message>
    <message>
        <source>Whoever is under it is crushed.</source>
        <translation>تسحق كل من تحتها.</translation>
    </message>
    <message>
        <source>Measure on a raised boom only with the engine off, the key removed, the boom support fitted, and nobody under it.</source>
        <translation>لا تقِس على ذراع رفع مرفوعة إلا والمحرك متوقف والمفتاح منزوع ودعامة الذراع مركَّبة، ولا أحد تحتها.</translation>
    </message>
    <message>
        <source>This phone has no accelerometer. Use an inclinometer and type what it shows.</source>
        <translation>ليس في هذا الهاتف مقياس تسارع. استخدم مقياس ميل واكتب ما يعرضه.</translation>
    </message>
    <message>
        <source>Slope along the phone&apos;s long side, as it lay first:</source>
        <translation>الميل على امتداد الضلع الطويل للهاتف، كما وُضع أولًا:</translation>
    </message>
    <message>
        <source>2. Turn the phone half round on the same spot, its top where its foot was. Hands off, then measure again.</source>
        <translation>2. أدِر الهاتف نصف دورة في الموضع نفسه، أعلاه حيث كان أسفله. ارفع يديك، ثم قِس من جديد.</translation>
    </message>
    <message>
        <source>1. Lay the phone flat on the bucket floor, the boom or the ground, its long side along the machine. Hands off, then measure.</source>
        <translation>1. ضع الهاتف مسطَّحًا على أرضية الدلو أو ذراع الرفع أو الأرض، وضلعه الطويل على امتداد الآلة. ارفع يديك، ثم قِس.</translation>
    </message>
    <message>
        <source>Measuring: keep your hands off</source>
        <translation>جارٍ القياس: ارفع يديك عنه</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>قِس</translation>
    </message>
    <message>
        <source>Begin again</source>
        <translation>ابدأ من جديد</translation>
    </message>
</context>
<context>
    <name>LiftChart</name>
    <message>
        <source>%1: %2 to %3 %4, from %5° to %6°.</source>
        <translation>%1: من %2 إلى %3 %4، من %5° إلى %6°.</translation>
    </message>
    <message>
        <source>Fitted tare: %1 to %2 %3, known to ± %4 %3 (95 %).</source>
        <translation>الوزن الفارغ بعد المواءمة: من %1 إلى %2 %3، معروف بدقة ± %4 %3 (95 %).</translation>
    </message>
    <message>
        <source>Lift pressure</source>
        <translation>ضغط الرفع</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom&apos;s angle</source>
        <translation>الضغط بوحدة %1 مقابل زاوية الذراع</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom sensor&apos;s reading</source>
        <translation>الضغط بوحدة %1 مقابل قراءة مستشعر الذراع</translation>
    </message>
    <message>
        <source>Chart of the lift pressure.</source>
        <translation>رسم بياني لضغط الرفع.</translation>
    </message>
    <message>
        <source>This pass</source>
        <translation>هذه التمريرة</translation>
    </message>
    <message>
        <source>Fitted tare</source>
        <translation>الوزن الفارغ بعد المواءمة</translation>
    </message>
    <message>
        <source>Where it lies with 95 % probability</source>
        <translation>حيث يقع باحتمال 95 %</translation>
    </message>
</context>
<context>
    <name>LiveBar</name>
    <message>
        <source>No readings are coming. They are waited for.</source>
        <translation>لا تأتي قراءات. يجري انتظارها.</translation>
    </message>
    <message>
        <source>Boom rising</source>
        <translation>الذراع ترتفع</translation>
    </message>
    <message>
        <source>Boom lowering</source>
        <translation>الذراع تنزل</translation>
    </message>
    <message>
        <source>Standing still</source>
        <translation>ساكنة</translation>
    </message>
    <message>
        <source>Boom %1°</source>
        <translation>الذراع ⁦%1°⁩</translation>
    </message>
    <message>
        <source>wanted %1°</source>
        <translation>المطلوب ⁦%1°⁩</translation>
    </message>
    <message>
        <source>%1 % done</source>
        <translation>تم %1 %</translation>
    </message>
    <message>
        <source>Practice: %1 It stays so until you say under Live readings that all is well, as if it had been mended.</source>
        <translation>تدريب: %1 يبقى الأمر كذلك حتى تقول في «القراءات المباشرة» إن كل شيء على ما يرام، كما لو أنه أُصلح.</translation>
    </message>
</context>
<context>
    <name>MachineView</name>
    <message>
        <source>Side view of the loader. Measure from A to B: %1</source>
        <translation>منظر جانبي للودر. قس من A إلى B: %1</translation>
    </message>
    <message>
        <source>Side view of the loader, boom at %1 degrees</source>
        <translation>منظر جانبي للودر، ذراع الرفع عند %1 درجة</translation>
    </message>
    <message>
        <source>Side view of the loader</source>
        <translation>منظر جانبي للودر</translation>
    </message>
    <message>
        <source>%1 degrees wanted</source>
        <translation>المطلوب %1 درجة</translation>
    </message>
    <message>
        <source>plausible, not its own pins</source>
        <translation>معقول، وليست مساميرها هي</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Press to close this message</source>
        <translation>اضغط لإغلاق هذه الرسالة</translation>
    </message>
</context>
<context>
    <name>MakeYardPage</name>
    <message>
        <source>Make my yard</source>
        <translation>أنشئ ساحتي</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>اسمك</translation>
    </message>
    <message>
        <source>You are mostly</source>
        <translation>دورك في الأغلب</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>عبارة المرور: 12 حرفًا أو أكثر، والأفضل بضع كلمات</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>عبارة المرور نفسها مرة أخرى</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>ليست هي نفسها.</translation>
    </message>
    <message>
        <source>It locks your signing key and the yard&apos;s key on this phone. Nobody can recover it: write it down and keep it where the office keeps its keys. Others can be added later, each with a key of their own.</source>
        <translation>تقفل مفتاح توقيعك ومفتاح الساحة على هذا الهاتف. لا يستطيع أحد استعادتها: اكتبها واحفظها حيث يحفظ المكتب مفاتيحه. ويمكن إضافة آخرين لاحقًا، لكل منهم مفتاحه.</translation>
    </message>
    <message>
        <source>Make the keys and the yard</source>
        <translation>أنشئ المفتاحين والساحة</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>أنشئ مفاتيح جديدة</translation>
    </message>
    <message>
        <source>Make the new keys</source>
        <translation>أنشئ المفاتيح الجديدة</translation>
    </message>
</context>
<context>
    <name>MonitorStep</name>
    <message>
        <source>In the monitor&apos;s own words, if you like</source>
        <translation>بكلمات الشاشة نفسها، إن شئت</translation>
    </message>
</context>
<context>
    <name>MoveStep</name>
    <message>
        <source>Move the practice loader</source>
        <translation>حرّك لودر التدريب</translation>
    </message>
    <message>
        <source>It does what the step asks; on a real machine your hands are on the levers</source>
        <translation>يفعل ما تطلبه الخطوة؛ أما على آلة حقيقية فيداك على عتلات التحكم</translation>
    </message>
    <message>
        <source>The pass is done</source>
        <translation>تمت التمريرة</translation>
    </message>
    <message>
        <source>It stands there</source>
        <translation>هي في الوضعية</translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>فشل</translation>
    </message>
    <message>
        <source>Boom at its lowest</source>
        <translation>الذراع في أدنى موضع</translation>
    </message>
    <message>
        <source>Boom at its highest</source>
        <translation>الذراع في أعلى موضع</translation>
    </message>
    <message>
        <source>Boom level</source>
        <translation>الذراع أفقية</translation>
    </message>
    <message>
        <source>Boom at carry height</source>
        <translation>الذراع عند ارتفاع النقل</translation>
    </message>
    <message>
        <source>Boom down, on the ground</source>
        <translation>الذراع منزَلة إلى الأرض</translation>
    </message>
    <message>
        <source>bucket racked back</source>
        <translation>الدلو مُمال إلى الخلف</translation>
    </message>
    <message>
        <source>bucket level</source>
        <translation>الدلو مستوٍ</translation>
    </message>
    <message>
        <source>bucket dumped</source>
        <translation>الدلو مقلوب للتفريغ</translation>
    </message>
    <message>
        <source>come from below</source>
        <translation>وصولًا من الأسفل</translation>
    </message>
    <message>
        <source>come from above</source>
        <translation>وصولًا من الأعلى</translation>
    </message>
    <message>
        <source>Raise</source>
        <translation>ارفع</translation>
    </message>
    <message>
        <source>Lower</source>
        <translation>أنزِل</translation>
    </message>
    <message>
        <source>slowly</source>
        <translation>ببطء</translation>
    </message>
    <message>
        <source>fast</source>
        <translation>بسرعة</translation>
    </message>
    <message>
        <source>at your own pace</source>
        <translation>بالسرعة التي تختارها</translation>
    </message>
    <message>
        <source>bucket empty</source>
        <translation>الدلو فارغ</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>مع كتلة الاختبار</translation>
    </message>
    <message>
        <source>This pass needs a log: open live readings, or bring the log as a file.</source>
        <translation>تحتاج هذه التمريرة إلى تسجيل: افتح القراءات المباشرة، أو أحضر التسجيل كملف.</translation>
    </message>
    <message>
        <source>Bring the log as a file</source>
        <translation>أحضر التسجيل كملف</translation>
    </message>
    <message>
        <source>Practise with the simulated loader</source>
        <translation>تدرّب مع لودر المحاكاة</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>تسجيلات رفع (%1)</translation>
    </message>
</context>
<context>
    <name>NoteStep</name>
    <message>
        <source>Write it down</source>
        <translation>اكتب ذلك</translation>
    </message>
    <message>
        <source>Nothing to note</source>
        <translation>لا شيء يُكتب</translation>
    </message>
    <message>
        <source>In your own words</source>
        <translation>بكلماتك أنت</translation>
    </message>
</context>
<context>
    <name>PeoplePage</name>
    <message>
        <source>People</source>
        <translation>الأشخاص</translation>
    </message>
    <message>
        <source>May not sign any more</source>
        <translation>لم يعد يجوز له التوقيع</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>المفتاح %1</translation>
    </message>
    <message>
        <source>Their name</source>
        <translation>اسم الشخص</translation>
    </message>
    <message>
        <source>A passphrase of their own, 12 characters or more</source>
        <translation>عبارة مرور خاصة به، 12 حرفًا أو أكثر</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>عبارة مرور الساحة</translation>
    </message>
    <message>
        <source>Add this person</source>
        <translation>أضف هذا الشخص</translation>
    </message>
    <message>
        <source>Add a person</source>
        <translation>أضف شخصًا</translation>
    </message>
    <message>
        <source>Add somebody on their own phone</source>
        <translation>أضف أحدًا على هاتفه</translation>
    </message>
    <message>
        <source>Signs on their own phone</source>
        <translation>يوقّع على هاتفه</translation>
    </message>
</context>
<context>
    <name>Plot</name>
    <message>
        <source>Slow, lowering</source>
        <translation>بطيئة، خفضًا</translation>
    </message>
    <message>
        <source>Fast, lowering</source>
        <translation>سريعة، خفضًا</translation>
    </message>
    <message>
        <source>Slow, raising</source>
        <translation>بطيئة، رفعًا</translation>
    </message>
    <message>
        <source>Fast, raising</source>
        <translation>سريعة، رفعًا</translation>
    </message>
</context>
<context>
    <name>ProofChart</name>
    <message>
        <source>Reading %1: %2 %</source>
        <translation>القراءة %1: %2 %</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>خارج الحدود</translation>
    </message>
    <message>
        <source>Mean %1 %.</source>
        <translation>المتوسط %1 %.</translation>
    </message>
    <message>
        <source>The mean may be off by %1 %.</source>
        <translation>يجوز أن ينحرف المتوسط بمقدار %1 %.</translation>
    </message>
    <message>
        <source>Errors of the proof</source>
        <translation>أخطاء إثبات الصحة</translation>
    </message>
    <message>
        <source>Error in % of the known mass, over the number of the reading</source>
        <translation>الخطأ بنسبة % من الكتلة المعروفة مقابل رقم القراءة</translation>
    </message>
    <message>
        <source>Chart of the errors of the proof.</source>
        <translation>رسم بياني لأخطاء إثبات الصحة.</translation>
    </message>
    <message>
        <source>Within the tolerance</source>
        <translation>ضمن التفاوت المسموح</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>خارج الحدود</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>المتوسط</translation>
    </message>
    <message>
        <source>Tolerance of the mean</source>
        <translation>تفاوت المتوسط</translation>
    </message>
</context>
<context>
    <name>ReadingStep</name>
    <message>
        <source>steady</source>
        <translation>ثابتة</translation>
    </message>
    <message>
        <source>not steady yet</source>
        <translation>لم تثبت بعد</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>أدخل</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>أدخل %1 %2</translation>
    </message>
    <message>
        <source>Typed: %1</source>
        <translation>المكتوب: %1</translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation>بين %1 و %2</translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation>على الأقل %1</translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation>على الأكثر %1</translation>
    </message>
    <message>
        <source>Last time: %1</source>
        <translation>المرة السابقة: %1</translation>
    </message>
    <message>
        <source>Practice: the instrument shows %1</source>
        <translation>تدريب: تعرض أداة القياس %1</translation>
    </message>
    <message>
        <source>Unit %1</source>
        <translation>الوحدة %1</translation>
    </message>
    <message>
        <source>Take the live value</source>
        <translation>خذ القيمة المباشرة</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1، %2</translation>
    </message>
    <message>
        <source>nothing comes yet</source>
        <translation>لا يصل شيء بعد</translation>
    </message>
    <message>
        <source>It is the known mass: %1</source>
        <translation>إنها الكتلة المعروفة: %1</translation>
    </message>
    <message>
        <source>The app weighed %1 in this lift</source>
        <translation>وزن التطبيق %1 في هذه الرفعة</translation>
    </message>
    <message>
        <source>± %1. Take it where the machine itself takes no values</source>
        <translation>± %1. خذها حيث لا تقبل الآلة نفسها قيمًا</translation>
    </message>
    <message>
        <source>Not measured</source>
        <translation>لم يُقَس</translation>
    </message>
    <message>
        <source>In the picture: the slope of the line from A to B</source>
        <translation>في الصورة: ميل الخط من A إلى B</translation>
    </message>
    <message>
        <source>In the picture: from A to B</source>
        <translation>في الصورة: من A إلى B</translation>
    </message>
    <message>
        <source>The loader is a plausible one: its own pins are not known yet.</source>
        <translation>اللودر المرسوم معقول: مساميره نفسها غير معروفة بعد.</translation>
    </message>
    <message>
        <source>Take the phone&apos;s level: %1°</source>
        <translation>خذ قيمة ميزان الهاتف: %1°</translation>
    </message>
    <message>
        <source>Measure with the phone as a level</source>
        <translation>قس بالهاتف كميزان</translation>
    </message>
    <message>
        <source>%1. Measured with the phone&apos;s top towards the bucket?</source>
        <translation>%1. هل قيس وأعلى الهاتف نحو الدلو؟</translation>
    </message>
    <message>
        <source>Lay it with its top towards the bucket</source>
        <translation>ضعه وأعلاه نحو الدلو</translation>
    </message>
</context>
<context>
    <name>RecordPage</name>
    <message>
        <source>Record</source>
        <translation>السجل</translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation>تسليم السجل</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>حجم الورق</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>احفظ بصيغة PDF</translation>
    </message>
    <message>
        <source>Save the sealed record itself</source>
        <translation>احفظ السجل المختوم نفسه</translation>
    </message>
    <message>
        <source>Any program that knows JSON Web Signatures can check it</source>
        <translation>يستطيع أي برنامج يعرف JSON Web Signatures أن يتحقق منه</translation>
    </message>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>احفظ بطاقة التحذير بصيغة PDF</translation>
    </message>
    <message>
        <source>Sign it too</source>
        <translation>وقّع عليه أيضًا</translation>
    </message>
    <message>
        <source>A further signature, with your own key</source>
        <translation>توقيع إضافي، بمفتاحك أنت</translation>
    </message>
    <message>
        <source>Correct it</source>
        <translation>صحّحه</translation>
    </message>
    <message>
        <source>By a new record that names this one; this one stays as it is</source>
        <translation>بسجل جديد يسمّي هذا السجل؛ ويبقى هذا كما هو</translation>
    </message>
    <message>
        <source>What was wrong, and what is right</source>
        <translation>ما الخطأ، وما الصواب</translation>
    </message>
    <message>
        <source>Seal the correction</source>
        <translation>اختم التصحيح</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>الرسوم البيانية</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>التمريرات، ما تتركه المواءمة، أخطاء إثبات الصحة</translation>
    </message>
    <message>
        <source>Calibration certificate</source>
        <translation>شهادة معايرة</translation>
    </message>
    <message>
        <source>To print, or for programs</source>
        <translation>للطباعة أو للبرامج</translation>
    </message>
    <message>
        <source>Where it stands</source>
        <translation>وضع السجل</translation>
    </message>
</context>
<context>
    <name>ResidualChart</name>
    <message>
        <source>bucket empty</source>
        <translation>الدلو فارغ</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>مع كتلة الاختبار</translation>
    </message>
    <message>
        <source>with a load</source>
        <translation>مع حمل</translation>
    </message>
    <message>
        <source>Standard deviation %1 %2, largest %3 %2</source>
        <translation>الانحراف المعياري %1 %2، الأكبر %3 %2</translation>
    </message>
    <message>
        <source>What the fit leaves</source>
        <translation>ما تتركه المواءمة</translation>
    </message>
    <message>
        <source>Measured less fitted, in %1, over the boom&apos;s angle; the chosen pass is drawn thick</source>
        <translation>المقيس ناقص المواءم، بوحدة %1، مقابل زاوية الذراع؛ التمريرة المختارة مرسومة بخط عريض</translation>
    </message>
    <message>
        <source>Chart of what the fit leaves.</source>
        <translation>رسم بياني لما تتركه المواءمة.</translation>
    </message>
</context>
<context>
    <name>ResumeStep</name>
    <message>
        <source>Go on</source>
        <translation>تابع</translation>
    </message>
    <message>
        <source>Take the job over as %1</source>
        <translation>تسلّم المهمة بصفة %1</translation>
    </message>
    <message>
        <source>The job was interrupted</source>
        <translation>قُطعت المهمة</translation>
    </message>
    <message>
        <source>Everything that was done is kept. Before you go on: is the machine as you left it, and is nobody near it? Cautions that still hold are shown again, and &quot;the zone is clear&quot; is asked for again.</source>
        <translation>كل ما نُفّذ محفوظ. قبل أن تتابع: هل الآلة كما تركتها، ولا أحد قربها؟ تُعرض من جديد تنبيهات السلامة التي ما زالت سارية، وتُطلب «المنطقة خالية» من جديد.</translation>
    </message>
    <message>
        <source>Somebody else</source>
        <translation>شخص آخر</translation>
    </message>
    <message>
        <source>%1 is in charge.</source>
        <translation>المسؤول: %1.</translation>
    </message>
    <message>
        <source>They go on with it. What you confirm as a second person you then confirm beside them, with your own passphrase.</source>
        <translation>هو من يتابع العمل. وما تؤكده بصفتك الشخص الثاني تؤكده عندئذٍ بجانبه، بعبارة مرورك الخاصة.</translation>
    </message>
</context>
<context>
    <name>SavedFile</name>
    <message>
        <source>Saved: %1</source>
        <translation>حُفظ: %1</translation>
    </message>
    <message>
        <source>Hand the file to another app</source>
        <translation>سلّم الملف إلى تطبيق آخر</translation>
    </message>
    <message>
        <source>Hand the file to</source>
        <translation>سلّم الملف إلى</translation>
    </message>
</context>
<context>
    <name>ScanView</name>
    <message>
        <source>This device has no camera. Choose a picture of the code.</source>
        <translation>ليس في هذا الجهاز كاميرا. اختر صورة للرمز.</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>لا يسمح الهاتف للتطبيق باستخدام الكاميرا. اسمح بذلك في إعدادات الهاتف، أو اختر صورة.</translation>
    </message>
    <message>
        <source>There is no code in this picture. Take it from nearer and straight from the front, the whole code in it.</source>
        <translation>لا يوجد رمز في هذه الصورة. التقطها من أقرب ومن الأمام مباشرة بحيث يظهر الرمز كله.</translation>
    </message>
    <message>
        <source>Choose a picture of the code</source>
        <translation>اختر صورة للرمز</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>صور (%1)</translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation>الإعدادات</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>المظهر</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>نهار</translation>
    </message>
    <message>
        <source>Night</source>
        <translation>ليل</translation>
    </message>
    <message>
        <source>Sunlight</source>
        <translation>ضوء الشمس</translation>
    </message>
    <message>
        <source>Black on white, thick lines</source>
        <translation>أسود على أبيض، خطوط سميكة</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>حجم النص</translation>
    </message>
    <message>
        <source>Gloves: larger keys</source>
        <translation>قفازات: أزرار أكبر</translation>
    </message>
    <message>
        <source>Wet glass: hold a key for it to count</source>
        <translation>زجاج مبلل: لا يُحتسب الزر إلا بضغط مطوّل</translation>
    </message>
    <message>
        <source>Sounds and vibration</source>
        <translation>الأصوات والاهتزاز</translation>
    </message>
    <message>
        <source>Speak the instructions</source>
        <translation>نطق التعليمات</translation>
    </message>
    <message>
        <source>Speak the instructions (this phone has no voice in this language)</source>
        <translation>نطق التعليمات (ليس في هذا الهاتف صوت بهذه اللغة)</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>الوحدات</translation>
    </message>
    <message>
        <source>Metric: kg, bar, °C, m</source>
        <translation>متري: kg، bar، °C، m</translation>
    </message>
    <message>
        <source>US: lb, psi, °F, in</source>
        <translation>أمريكي: lb، psi، °F، in</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>اللغة</translation>
    </message>
    <message>
        <source>This translation was made by a machine. A native speaker who knows the trade has still to review it.</source>
        <translation>أنجزت هذه الترجمة آلة. ولم يراجعها بعدُ متحدث أصلي يعرف المهنة.</translation>
    </message>
    <message>
        <source>You act as</source>
        <translation>تعمل بصفة</translation>
    </message>
    <message>
        <source>People who may sign on this phone</source>
        <translation>من يجوز لهم التوقيع على هذا الهاتف</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>القراءات المباشرة</translation>
    </message>
    <message>
        <source>The phone as a level</source>
        <translation>الهاتف كمقياس ميل</translation>
    </message>
    <message>
        <source>Lock</source>
        <translation>اقفل التطبيق</translation>
    </message>
    <message>
        <source>The next person opens it with their own key</source>
        <translation>يفتحه الشخص التالي بمفتاحه</translation>
    </message>
    <message>
        <source>Hingepin %1. The app is free software under the GNU General Public License, version 3 or later; its engine under the Apache License 2.0. It never writes to a machine. A verdict here does not make a scale legal for trade; that needs the authority in charge.</source>
        <translation>‏Hingepin %1. التطبيق برنامج حر برخصة GNU General Public License، الإصدار 3 أو أحدث؛ ومحرّكه برخصة Apache License 2.0. لا يكتب أبدًا إلى أي آلة. الحكم هنا لا يجعل ميزانًا قانونيًا للتعامل التجاري؛ ذلك يحتاج إلى الجهة المختصة.</translation>
    </message>
    <message>
        <source>Save the app&apos;s log</source>
        <translation>حفظ سجل التطبيق</translation>
    </message>
    <message>
        <source>What it did and what failed, without names: for whoever looks into a fault</source>
        <translation>ما فعله وما فشل، من دون أسماء: لمن يبحث في العطل</translation>
    </message>
    <message>
        <source>Exchange with the office</source>
        <translation>التبادل مع المكتب</translation>
    </message>
    <message>
        <source>Where records are sent to, and what still waits</source>
        <translation>إلى أين تُرسل السجلات وما الذي ما زال ينتظر</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>كيف يُحكم على إثباتات الصحة في هذه الساحة</translation>
    </message>
    <message>
        <source>Tolerance and decision rule, where a unit does not say otherwise</source>
        <translation>التفاوت المسموح وقاعدة القرار، حيث لا تحدد المعدّة غير ذلك</translation>
    </message>
</context>
<context>
    <name>SignStep</name>
    <message>
        <source>Sign</source>
        <translation>وقّع</translation>
    </message>
    <message>
        <source>Clear the glass</source>
        <translation>امسح اللوحة</translation>
    </message>
    <message>
        <source>Absent</source>
        <translation>غائب عن التوقيع</translation>
    </message>
    <message>
        <source>Refused</source>
        <translation>رفض التوقيع</translation>
    </message>
    <message>
        <source>You sign as %1, %2, with your key on this phone.</source>
        <translation>توقّع باسم %1، %2، بمفتاحك على هذا الهاتف.</translation>
    </message>
</context>
<context>
    <name>SignaturePad</name>
    <message>
        <source>Sign here with a finger</source>
        <translation>وقّع هنا بإصبعك</translation>
    </message>
</context>
<context>
    <name>StateMark</name>
    <message>
        <source>ready</source>
        <translation>جاهز</translation>
    </message>
    <message>
        <source>due soon</source>
        <translation>يستحق قريبًا</translation>
    </message>
    <message>
        <source>due</source>
        <translation>مستحق</translation>
    </message>
    <message>
        <source>restricted</source>
        <translation>مقيَّد</translation>
    </message>
    <message>
        <source>do not use</source>
        <translation>لا تستخدم</translation>
    </message>
    <message>
        <source>not calibrated</source>
        <translation>غير معايَر</translation>
    </message>
</context>
<context>
    <name>SyncPage</name>
    <message>
        <source>Exchange with the office</source>
        <translation>التبادل مع المكتب</translation>
    </message>
    <message>
        <source>Records, signatures and photos go to a place of the yard&apos;s own and come from there to every phone. What arrives is verified before it counts.</source>
        <translation>تذهب السجلات والتواقيع والصور إلى مكان تابع للساحة ومنه تصل إلى كل هاتف. وما يصل يُتحقق منه قبل أن يُعتدّ به.</translation>
    </message>
    <message>
        <source>The password is not kept for you on this phone. Enter it once.</source>
        <translation>كلمة المرور غير محفوظة لك على هذا الهاتف. أدخلها مرة واحدة.</translation>
    </message>
    <message>
        <source>Kind of place</source>
        <translation>نوع المكان</translation>
    </message>
    <message>
        <source>Share (WebDAV)</source>
        <translation>مشاركة (WebDAV)</translation>
    </message>
    <message>
        <source>Object storage (S3)</source>
        <translation>تخزين كائنات (S3)</translation>
    </message>
    <message>
        <source>Address, beginning with https://</source>
        <translation>العنوان، يبدأ بـ https://</translation>
    </message>
    <message>
        <source>Bucket</source>
        <translation>الحاوية (Bucket)</translation>
    </message>
    <message>
        <source>Region</source>
        <translation>المنطقة</translation>
    </message>
    <message>
        <source>Id of the access key</source>
        <translation>معرّف مفتاح الوصول</translation>
    </message>
    <message>
        <source>User name</source>
        <translation>اسم المستخدم</translation>
    </message>
    <message>
        <source>Secret key</source>
        <translation>المفتاح السري</translation>
    </message>
    <message>
        <source>Password of the share</source>
        <translation>كلمة مرور المشاركة</translation>
    </message>
    <message>
        <source>By itself, when there is a network</source>
        <translation>تلقائيًا عند توفر شبكة</translation>
    </message>
    <message>
        <source>Also over a network that is paid for by what it carries</source>
        <translation>أيضًا عبر شبكة تُدفع أجرتها بحسب ما تنقله</translation>
    </message>
    <message>
        <source>Waits to be sent</source>
        <translation>بانتظار الإرسال</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>لا شيء ينتظر.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>منذ %1</translation>
    </message>
    <message>
        <source>and %1 more</source>
        <translation>و%1 أخرى</translation>
    </message>
    <message>
        <source>Arrived and not believed</source>
        <translation>وصل ولم يُصدَّق</translation>
    </message>
    <message>
        <source>Keep this place</source>
        <translation>احفظ هذا المكان</translation>
    </message>
    <message>
        <source>Send and fetch now</source>
        <translation>أرسل واجلب الآن</translation>
    </message>
    <message>
        <source>Stop for now</source>
        <translation>توقف الآن</translation>
    </message>
    <message>
        <source>It goes on from here the next time</source>
        <translation>يتابع من هنا في المرة القادمة</translation>
    </message>
    <message>
        <source>Change the place</source>
        <translation>غيّر المكان</translation>
    </message>
    <message>
        <source>Set up the place</source>
        <translation>أعدّ المكان</translation>
    </message>
    <message>
        <source>Certificate of the share&apos;s own authority</source>
        <translation>شهادة السلطة الخاصة بالمشاركة</translation>
    </message>
    <message>
        <source>Chosen: %1</source>
        <translation>المختار: %1</translation>
    </message>
    <message>
        <source>Only where the yard made its certificate itself: choose the file (PEM) that whoever runs the share gives out</source>
        <translation>فقط إذا أصدرت الساحة شهادتها بنفسها: اختر الملف (PEM) الذي يعطيه من يدير المشاركة</translation>
    </message>
    <message>
        <source>Certificates (%1)</source>
        <translation>الشهادات (%1)</translation>
    </message>
</context>
<context>
    <name>TagStep</name>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>احفظ بطاقة التحذير بصيغة PDF</translation>
    </message>
    <message>
        <source>The tag hangs on the machine</source>
        <translation>بطاقة التحذير معلَّقة على الآلة</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>حُفظ: %1</translation>
    </message>
</context>
<context>
    <name>TermsPage</name>
    <message>
        <source>How proofs of %1 are judged</source>
        <translation>كيف يُحكم على إثباتات صحة %1</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>كيف يُحكم على إثباتات الصحة في هذه الساحة</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it. What is left open here the yard says.</source>
        <translation>يُحكم بها على الأعمال التي تبدأ من الآن. وما يُترك هنا مفتوحًا تحدده الساحة.</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it, unless the unit itself says otherwise.</source>
        <translation>يُحكم بها على الأعمال التي تبدأ من الآن، ما لم تحدد المعدّة نفسها غير ذلك.</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>التفاوت المسموح</translation>
    </message>
    <message>
        <source>As the yard says</source>
        <translation>كما تحدد الساحة</translation>
    </message>
    <message>
        <source>As each procedure says</source>
        <translation>كما يحدد كل إجراء</translation>
    </message>
    <message>
        <source>A percentage of the load</source>
        <translation>نسبة مئوية من الحمل</translation>
    </message>
    <message>
        <source>A class of OIML R 76</source>
        <translation>فئة وفق OIML R 76</translation>
    </message>
    <message>
        <source>Scales that weigh at rest</source>
        <translation>موازين تزن في حالة السكون</translation>
    </message>
    <message>
        <source>A class of OIML R 51, category Y</source>
        <translation>فئة وفق OIML R 51، الصنف Y</translation>
    </message>
    <message>
        <source>Scales that weigh each load by themselves</source>
        <translation>موازين تزن كل حمل تلقائيًا</translation>
    </message>
    <message>
        <source>A class of NIST Handbook 44, 2.20</source>
        <translation>فئة وفق NIST Handbook 44، البند 2.20</translation>
    </message>
    <message>
        <source>Scales in the United States</source>
        <translation>موازين في الولايات المتحدة</translation>
    </message>
    <message>
        <source>Steps of our own</source>
        <translation>درجات خاصة بنا</translation>
    </message>
    <message>
        <source>Largest error, up or down, %</source>
        <translation>أكبر خطأ، زيادةً أو نقصانًا، %</translation>
    </message>
    <message>
        <source>Per cent of</source>
        <translation>نسبة مئوية من</translation>
    </message>
    <message>
        <source>The mass that is lifted</source>
        <translation>الكتلة المرفوعة</translation>
    </message>
    <message>
        <source>The rated payload</source>
        <translation>الحمولة الاسمية</translation>
    </message>
    <message>
        <source>Class</source>
        <translation>الفئة</translation>
    </message>
    <message>
        <source>Scale division d, %1</source>
        <translation>تدريجة الميزان d، %1</translation>
    </message>
    <message>
        <source>Verification interval e, %1</source>
        <translation>تدريجة التحقق e، %1</translation>
    </message>
    <message>
        <source>Which limits</source>
        <translation>أي حدود</translation>
    </message>
    <message>
        <source>Acceptance: new or just repaired</source>
        <translation>القبول: جديد أو أُصلح للتو</translation>
    </message>
    <message>
        <source>Maintenance: in use</source>
        <translation>الصيانة: قيد الاستعمال</translation>
    </message>
    <message>
        <source>Initial: new or just repaired</source>
        <translation>أوّلي: جديد أو أُصلح للتو</translation>
    </message>
    <message>
        <source>In service</source>
        <translation>أثناء الخدمة</translation>
    </message>
    <message>
        <source>Loads up to, %1</source>
        <translation>الأحمال حتى، %1</translation>
    </message>
    <message>
        <source>Largest error there, %1</source>
        <translation>أكبر خطأ هناك، %1</translation>
    </message>
    <message>
        <source>Remove this step</source>
        <translation>أزل هذه الدرجة</translation>
    </message>
    <message>
        <source>One more step</source>
        <translation>درجة أخرى</translation>
    </message>
    <message>
        <source>When is it passed?</source>
        <translation>متى يُعدّ ناجحًا؟</translation>
    </message>
    <message>
        <source>When its error is within the limit</source>
        <translation>حين يكون الخطأ ضمن الحد</translation>
    </message>
    <message>
        <source>Near the limit a wrong verdict is about as likely as a right one</source>
        <translation>قرب الحد يكون الحكم الخاطئ محتملًا بقدر الحكم الصائب تقريبًا</translation>
    </message>
    <message>
        <source>When it is plain that its error is within the limit</source>
        <translation>حين يكون من المؤكد أن الخطأ ضمن الحد</translation>
    </message>
    <message>
        <source>The doubt of the proof counts against the scale</source>
        <translation>شكّ الإثبات يُحسب على الميزان</translation>
    </message>
    <message>
        <source>How sure, %</source>
        <translation>درجة التأكد، %</translation>
    </message>
    <message>
        <source>A verdict by any of these does not make a scale legal for trade. That needs the authority in charge.</source>
        <translation>لا يجعل أي حكم من هذه الأحكام الميزان قانونيًا للتجارة. ذلك يتطلب الجهة المختصة.</translation>
    </message>
    <message>
        <source>Nothing was saved: see above.</source>
        <translation>لم يُحفظ شيء: انظر أعلاه.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>احفظ</translation>
    </message>
</context>
<context>
    <name>UnitEditPage</name>
    <message>
        <source>The machine&apos;s own routine</source>
        <translation>إجراء الآلة نفسها</translation>
    </message>
    <message>
        <source>Readings typed from its monitor</source>
        <translation>قراءات تُكتب من شاشتها</translation>
    </message>
    <message>
        <source>Logs or a live feed</source>
        <translation>تسجيلات أو قراءات مباشرة</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>تعديل %1</translation>
    </message>
    <message>
        <source>New unit</source>
        <translation>معدّة جديدة</translation>
    </message>
    <message>
        <source>Number or name of the unit</source>
        <translation>رقم المعدّة أو اسمها</translation>
    </message>
    <message>
        <source>Rated payload, kg</source>
        <translation>الحمولة الاسمية، kg</translation>
    </message>
    <message>
        <source>Lift cylinders, how many</source>
        <translation>عدد أسطوانات الرفع</translation>
    </message>
    <message>
        <source>Lift cylinder bore, mm</source>
        <translation>قطر تجويف أسطوانة الرفع، mm</translation>
    </message>
    <message>
        <source>Lift cylinder rod, mm</source>
        <translation>قطر ساق أسطوانة الرفع، mm</translation>
    </message>
    <message>
        <source>Weigh window from boom angle, degrees (if known)</source>
        <translation>نافذة الوزن من زاوية الذراع، درجات (إن عُرفت)</translation>
    </message>
    <message>
        <source>Weigh window to boom angle, degrees (if known)</source>
        <translation>نافذة الوزن إلى زاوية الذراع، درجات (إن عُرفت)</translation>
    </message>
    <message>
        <source>Oil at least, °C, before pressures are taught (if the manual says)</source>
        <translation>حرارة الزيت على الأقل، °C، قبل تلقين الضغوط (إن ذكرها الدليل)</translation>
    </message>
    <message>
        <source>Test mass of the yard, kg (if there is one)</source>
        <translation>كتلة الاختبار لدى الساحة، kg (إن وُجدت)</translation>
    </message>
    <message>
        <source>Due again after, hours (if the yard says)</source>
        <translation>الاستحقاق من جديد بعد، ساعات (إن حددته الساحة)</translation>
    </message>
    <message>
        <source>It can be taught by</source>
        <translation>يمكن تلقينها بواسطة</translation>
    </message>
    <message>
        <source>Its monitor shows</source>
        <translation>ما تعرضه شاشتها</translation>
    </message>
    <message>
        <source>Press the unit in which it shows it; press it again if it does not show it at all. Mind which ton it is.</source>
        <translation>اضغط الوحدة التي تعرضه بها؛ واضغطها من جديد إن كانت لا تعرضه أصلًا. انتبه أي طن هو.</translation>
    </message>
    <message>
        <source>For practice: an invented machine</source>
        <translation>للتدريب: آلة وهمية</translation>
    </message>
    <message>
        <source>Its records say so; the simulated loader may stand in for it</source>
        <translation>تذكر سجلاتها ذلك؛ ويجوز أن يحل محلها لودر المحاكاة</translation>
    </message>
    <message>
        <source>Linkage</source>
        <translation>الآلية المفصلية</translation>
    </message>
    <message>
        <source>Its pins are on file: empty passes are enough to calibrate.</source>
        <translation>مساميرها محفوظة في ملف: التمريرات الفارغة تكفي للمعايرة.</translation>
    </message>
    <message>
        <source>Its pins are not known. It can be calibrated with a known mass all the same.</source>
        <translation>مساميرها غير معروفة. ومع ذلك يمكن معايرتها بكتلة معلومة.</translation>
    </message>
    <message>
        <source>Read the pins from a file</source>
        <translation>اقرأ المسامير من ملف</translation>
    </message>
    <message>
        <source>Unit or job files (%1)</source>
        <translation>ملفات معدّة أو مهمة (%1)</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>احفظ</translation>
    </message>
</context>
<context>
    <name>UnitPage</name>
    <message>
        <source>With %1</source>
        <translation>مع %1</translation>
    </message>
    <message>
        <source>Due again %1</source>
        <translation>الاستحقاق القادم %1</translation>
    </message>
    <message>
        <source>Save its label as a PDF</source>
        <translation>احفظ ملصقها بصيغة PDF</translation>
    </message>
    <message>
        <source>Begin a job</source>
        <translation>ابدأ مهمة</translation>
    </message>
    <message>
        <source>Edit the unit</source>
        <translation>عدّل المعدّة</translation>
    </message>
    <message>
        <source>Attachments</source>
        <translation>الملحقات</translation>
    </message>
    <message>
        <source>Compare check-out and return</source>
        <translation>قارن التسليم والإرجاع</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>السجلات</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>لا شيء بعد.</translation>
    </message>
    <message>
        <source>not trusted</source>
        <translation>غير موثوق</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>مصحَّح</translation>
    </message>
    <message>
        <source>Its zero and span over the months</source>
        <translation>صفره ومداه عبر الأشهر</translation>
    </message>
    <message>
        <source>Stops: what to set</source>
        <translation>نقاط التوقف: ما يُضبط</translation>
    </message>
    <message>
        <source>A disputed load: what was it worth?</source>
        <translation>حمولة متنازع عليها: كم كانت تساوي؟</translation>
    </message>
    <message>
        <source>Something happened to it</source>
        <translation>حدث لها شيء</translation>
    </message>
    <message>
        <source>Repaired, welded, overloaded, battery lost: the scale is due again</source>
        <translation>إصلاح أو لحام أو حمل زائد أو فقد البطارية: يصبح الميزان مستحقًّا من جديد</translation>
    </message>
    <message>
        <source>How its proofs are judged</source>
        <translation>كيف يُحكم على إثباتات صحته</translation>
    </message>
    <message>
        <source>Survey its linkage</source>
        <translation>امسح آليته المفصلية</translation>
    </message>
    <message>
        <source>Its pins are not on file: a tape and an inclinometer find them, and its scale weighs more surely</source>
        <translation>مساميره غير مسجلة: شريط قياس ومقياس ميل يجدانها فيزن ميزانه بثقة أكبر</translation>
    </message>
</context>
<context>
    <name>UnlockPage</name>
    <message>
        <source>Demo yard: who are you?</source>
        <translation>الساحة التجريبية: من أنت؟</translation>
    </message>
    <message>
        <source>Who is at the phone?</source>
        <translation>من الذي على الهاتف؟</translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation>عبارة المرور</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>افتح</translation>
    </message>
    <message>
        <source>Another yard</source>
        <translation>ساحة أخرى</translation>
    </message>
    <message>
        <source>All of them are invented. Choose whom you want to be.</source>
        <translation>كلهم وهميون. اختر من تريد أن تكون.</translation>
    </message>
    <message>
        <source>Choose your name.</source>
        <translation>اختر اسمك.</translation>
    </message>
</context>
<context>
    <name>WaitStep</name>
    <message>
        <source>Compute again</source>
        <translation>احسب من جديد</translation>
    </message>
</context>
<context>
    <name>ZoneStep</name>
    <message>
        <source>Hold: the zone is clear</source>
        <translation>اضغط مطوّلًا: المنطقة خالية</translation>
    </message>
    <message>
        <source>The machine moves next. Nobody near it, nobody under the boom, everybody in sight.</source>
        <translation>ستتحرك الآلة بعد هذا. لا أحد قربها، ولا أحد تحت ذراع الرفع، والجميع على مرأى منك.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile</name>
    <message>
        <source>read</source>
        <translation>قُرئ</translation>
    </message>
    <message>
        <source>zone clear</source>
        <translation>المنطقة خالية</translation>
    </message>
    <message>
        <source>gone back to do it again</source>
        <translation>رجوع لتنفيذها من جديد</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>نعم</translation>
    </message>
    <message>
        <source>no</source>
        <translation>لا</translation>
    </message>
    <message>
        <source>done</source>
        <translation>تم</translation>
    </message>
    <message>
        <source>did not work</source>
        <translation>فشل</translation>
    </message>
    <message>
        <source>photo or file kept</source>
        <translation>حُفظت صورة أو ملف</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>جرى تخطيه</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>وُقّع</translation>
    </message>
    <message>
        <source>not there to sign</source>
        <translation>غائب عن التوقيع</translation>
    </message>
    <message>
        <source>refused to sign</source>
        <translation>رفض التوقيع</translation>
    </message>
    <message>
        <source>nobody there to confirm</source>
        <translation>لا أحد هناك ليؤكد</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::App</name>
    <message>
        <source>Technician</source>
        <translation>فنّي</translation>
    </message>
    <message>
        <source>Operator</source>
        <translation>مشغّل</translation>
    </message>
    <message>
        <source>Supervisor</source>
        <translation>مشرف</translation>
    </message>
    <message>
        <source>Safety lead</source>
        <translation>مسؤول السلامة</translation>
    </message>
    <message>
        <source>Yard checker</source>
        <translation>فاحص الساحة</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>عميل</translation>
    </message>
    <message>
        <source>DANGER</source>
        <translation>خطر</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>تحذير</translation>
    </message>
    <message>
        <source>CAUTION</source>
        <translation>تنبيه</translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation>إشعار</translation>
    </message>
    <message>
        <source>Last time the app ended in a fault of its own. What was answered is kept: a job opens where it was. Under Settings you can save the log for whoever looks into it.</source>
        <translation>في المرة الماضية توقف التطبيق بسبب عطل فيه. ما أُجيب عنه محفوظ: تُفتح المهمة حيث كانت. يمكنك من الإعدادات حفظ السجل لمن يبحث في السبب.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Joiner</name>
    <message>
        <source>You are let in. The yard&apos;s lists did not fit in the code: they come with the next exchange, or as a file. Until then you can&apos;t sign on this phone.</source>
        <translation>تم قبولك. لم يتسع الرمز لقوائم الساحة، وستصل مع التبادل التالي أو في ملف. لا يمكنك التوقيع على هذا الهاتف قبل ذلك.</translation>
    </message>
    <message>
        <source>The yard&apos;s key is not on this phone. Let people in on the phone on which the yard was made.</source>
        <translation>مفتاح الساحة ليس على هذا الهاتف. اقبل الأشخاص على الهاتف الذي أُنشئت عليه الساحة.</translation>
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
        <translation>تعذّر فتح %1: %2</translation>
    </message>
    <message>
        <source>The simulated loader is for practice units only.</source>
        <translation>اللودر المحاكى مخصص لمعدات التدريب فقط.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Photos</name>
    <message>
        <source>Practice picture, invented</source>
        <translation>صورة تدريب، وهمية</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Profiles</name>
    <message>
        <source>This file holds no linkage. A unit&apos;s profile, a calibration job, or the linkage alone is needed.</source>
        <translation>لا يحوي هذا الملف آلية مفصلية. المطلوب ملف تعريف معدّة، أو مهمة معايرة، أو الآلية المفصلية وحدها.</translation>
    </message>
    <message>
        <source>Mass on the scale</source>
        <translation>الكتلة على الميزان</translation>
    </message>
    <message>
        <source>Boom angle</source>
        <translation>زاوية الذراع</translation>
    </message>
    <message>
        <source>Boom sensor</source>
        <translation>مستشعر الذراع</translation>
    </message>
    <message>
        <source>Bucket sensor</source>
        <translation>مستشعر الدلو</translation>
    </message>
    <message>
        <source>Lift pressure, head side</source>
        <translation>ضغط الرفع، جهة الرأس</translation>
    </message>
    <message>
        <source>Lift pressure, rod side</source>
        <translation>ضغط الرفع، جهة الساق</translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation>حرارة الزيت</translation>
    </message>
    <message>
        <source>Operating hours</source>
        <translation>ساعات التشغيل</translation>
    </message>
    <message>
        <source>Fuel level</source>
        <translation>مستوى الوقود</translation>
    </message>
    <message>
        <source>counts</source>
        <translation>عدّات</translation>
    </message>
    <message>
        <source>Choose a class.</source>
        <translation>اختر فئة.</translation>
    </message>
    <message>
        <source>Type a number from 50 to 99.99.</source>
        <translation>اكتب رقمًا من 50 إلى 99.99.</translation>
    </message>
    <message>
        <source>Type a number.</source>
        <translation>اكتب رقمًا.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Syncer</name>
    <message>
        <source>You begin each exchange yourself.</source>
        <translation>أنت من يبدأ كل تبادل.</translation>
    </message>
    <message>
        <source>No network now.</source>
        <translation>لا توجد شبكة الآن.</translation>
    </message>
    <message>
        <source>This network is paid for by what it carries.</source>
        <translation>تُدفع أجرة هذه الشبكة بحسب ما تنقله.</translation>
    </message>
    <message>
        <source>Record or signature</source>
        <translation>سجل أو توقيع</translation>
    </message>
    <message>
        <source>List of who may sign</source>
        <translation>قائمة من يحق لهم التوقيع</translation>
    </message>
    <message>
        <source>Photo, log or other evidence</source>
        <translation>صورة أو سجل قراءات أو دليل آخر</translation>
    </message>
    <message>
        <source>A person&apos;s name or photo</source>
        <translation>اسم شخص أو صورته</translation>
    </message>
    <message>
        <source>%1 of %2 parcels sent, %3 received; %4 records new here; evidence: %5 sent, %6 received</source>
        <translation>أُرسل %1 من %2 رزم، واستُلم %3؛ %4 سجلات جديدة هنا؛ الأدلة: أُرسل %5، واستُلم %6</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Yard</name>
    <message>
        <source>on their own phone</source>
        <translation>على هاتفه هو</translation>
    </message>
</context>
</TS>
