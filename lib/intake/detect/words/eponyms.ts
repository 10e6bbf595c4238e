/**
 * Surnames that a note of this field holds as the name of a method, bone disease or syndrome. They are no patient's name unless a title
 * stands before them. Folded.
 */
export const eponyms: ReadonlySet<string> = new Set(
  `achilles albright apert bastiani beckwith blount caffey calve charcot colles creveld danlos desbuquois ehlers ellis ender fanconi
  gigli goldenhar gruber harris haversian hoffa hoffmann hueter hurler ilizarov judet kienbock kirschner klippel kniest kuntscher
  langenbeck langenskiold larsen legg leri looser madelung maffucci marchesani marfan mcmurray menelaus morquio moseley nes ness
  netter nievergelt noonan ollier osgood paget paley perthes proteus quervain recklinghausen robinow russell salter sarmiento schanz
  schlatter silver sjogren steinmann stickler sudeck trendelenburg trevor turner volkmann wagner weill weismann wiedemann willebrand
  wilms wolff woude`.split(/\s+/),
);
