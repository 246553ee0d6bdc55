package family

// points are written for parents and for an older child to read together. What
// they say of hands is common practice, no source.
var points = []Point{
	{Opening, "", "What we plan to do",
		"Before birth, some fingers of this hand did not come apart. It is nobody's fault. The operation parts them and makes a new web, the soft fold of skin between two fingers. Parting the fingers makes a gap. It does not change how the bones, the joints and the nails were made. So some things stay as they are. We want you to know them now. Please ask us anything, at any time."},
	{Rotation, "A finger is turned about its length", "A finger that is turned",
		"One finger is turned a little, so its nail looks to the side. Parting the fingers does not turn it back. As the child grows, we will watch whether it gets in the way when the hand makes a fist. If it does, we can talk about an operation on the bone later."},
	{Deviation, "A finger is bent to the side", "A finger that leans to the side",
		"One finger leans to the side. The bend comes from the bone or the joint, and it stays after the fingers are parted. It can become more or less as the child grows. A splint may be tried. Some children have another operation on the bone when they are older."},
	{Stiffness, "A joint is stiff", "A joint that does not bend well",
		"One joint does not bend, or bends only a little. Parting the fingers does not make it bend. Many children find their own way to hold things with a stiff finger. A hand therapist can help. We do not know yet how much the finger will be able to do."},
	{JoinedNails, "The nails are joined", "Nails that are joined",
		"The nails are joined too. After they are parted, each nail can be narrow, ridged or uneven at its edge, and the fingertip can be slim on that side. This stays visible. If a nail grows into the skin or hurts, a small operation may help."},
	{MissingPhalanx, "A bone or a joint of a finger is missing", "A bone that is missing",
		"One finger has a bone less than most fingers, so it is shorter or has one joint less. Parting the fingers does not add the bone. The finger stays short, and it keeps its own way of moving. The new web is planned in another way for this finger, and we will show you how."},
	{OvergrownDigit, "A finger is larger than on the other hand", "A finger that is larger",
		"One finger is longer or wider than the same finger of the other hand. It may grow faster than the others. Parting the fingers does not stop this. We will measure both hands at each visit. If the finger goes on growing too much, we will talk about what can be done and when."},
	{SeveralDigits, "More than two digits are joined", "More than two fingers together",
		"More than two fingers are joined. Both sides of one finger are not parted on the same day, because the blood that feeds the finger could be harmed. So there will be at least two operations, with some months between them. Until then only some of the fingers are apart. That is part of the plan."},
	{AfterOperation, "", "After the operation",
		"There will be scars, and often a piece of skin from another part of the body. That skin can look darker, lighter or grow hair, and the place it came from has a scar as well. Scars are red and firm at first and take a year or more to settle. While the child grows, the web can creep forward again. Some children then need another operation. That is why we want to see the hand again and again until it is grown."},
	{Closing, "", "Your questions",
		"This page is there to help you ask. It does not stand in for your visit. The surgeon will tell you what is meant for your child, and what else can go wrong. Write your questions here and bring them along."},
}
