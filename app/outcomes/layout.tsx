import { type ReactNode, Suspense } from "react";
import { PlacesLine } from "./_places/places-line";

export default function OutcomesLayout({ children }: { readonly children: ReactNode }) {
  return (
    <>
      <Suspense>
        <PlacesLine />
      </Suspense>
      {children}
    </>
  );
}
